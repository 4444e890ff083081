import { ROW } from '../../lessons/drills/kits/row.ts';
import { ROW_WORDS } from '../../strings/drill-words/row.ts';
import type { WordedKit } from './kit.ts';

export const kit: WordedKit = { ...ROW, words: ROW_WORDS };
