import { FINISH } from '../../lessons/drills/kits/finish.ts';
import { FINISH_WORDS } from '../../strings/drill-words/finish.ts';
import type { WordedKit } from './kit.ts';

export const kit: WordedKit = { ...FINISH, words: FINISH_WORDS };
