import type { Case } from '../case.ts';
import { BLOCK } from './block.ts';
import { FINISHED } from './finish.ts';
import { DRAWN } from './line.ts';
import { MOVED } from './move.ts';

export const CASES: readonly Case[] = [...BLOCK, ...DRAWN, ...MOVED, ...FINISHED];
