import { PRINCESS } from '../../lessons/drills/kits/princess.ts';
import { PRINCESS_WORDS } from '../../strings/drill-words/princess.ts';
import type { WordedKit } from './kit.ts';

export const kit: WordedKit = { ...PRINCESS, words: PRINCESS_WORDS };
