import { MOVING } from '../../lessons/drills/kits/moving.ts';
import { MOVING_WORDS } from '../../strings/drill-words/moving.ts';
import type { WordedKit } from './kit.ts';

export const kit: WordedKit = { ...MOVING, words: MOVING_WORDS };
