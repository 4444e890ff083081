import { LINE } from '../../lessons/drills/kits/line.ts';
import { LINE_WORDS } from '../../strings/drill-words/line.ts';
import type { WordedKit } from './kit.ts';

export const kit: WordedKit = { ...LINE, words: LINE_WORDS };
