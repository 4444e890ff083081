import type { Block } from '../pattern/block.ts';
import type { Settings } from '../progress/settings.ts';
import type { LessonSession } from './session.svelte.ts';

/** What the menu of a lesson is about, and what it leads to. */
export interface Offered {
  readonly session: LessonSession;
  readonly block: Block;
  readonly settings: Settings;
  readonly onSettings: (settings: Settings) => void;
  readonly onThrough: () => void;
  readonly onPaper: () => void;
  readonly onBodies: () => void;
  readonly onDemonstration: () => void;
}
