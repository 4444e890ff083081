import { FULLNESS } from '../../lessons/drills/kits/fullness.ts';
import { FULLNESS_WORDS } from '../../strings/drill-words/fullness.ts';
import type { WordedKit } from './kit.ts';

export const kit: WordedKit = { ...FULLNESS, words: FULLNESS_WORDS };
