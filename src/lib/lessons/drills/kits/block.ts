import { BLOCK_HANDS } from '../hands/block.ts';
import { findingOf } from '../kinds/block.ts';
import { find, openOut, read } from '../rules/block.ts';
import type { DrillKit } from './kit.ts';

export const BLOCK = {
  of: findingOf,
  hands: BLOCK_HANDS,
  rules: { find, read, 'open-out': openOut },
} satisfies DrillKit;
