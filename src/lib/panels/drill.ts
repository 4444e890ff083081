import { resolve } from '$app/paths';
import { beginningOf } from '../lessons/drills/begin.ts';
import type { Drill, ExerciseId } from '../lessons/drills/types.ts';
import type { Block } from '../pattern/block.ts';
import { drillTerms } from '../strings/drill-terms.ts';
import type { Settings } from '../progress/settings.ts';
import type { DrillHints } from '../strings/drill-words/hints.ts';
import type { Made, Maker } from './drills/maker.ts';

/** A drill made ready to be worked on: its lesson, and the block it begins on. */
export interface ReadyDrill extends Made {
  /** For which cloth, how closely it is marked, with how many hints. */
  readonly terms: string;
  readonly drill: Drill;
  readonly block: Block;
}

const moving = () => import('./drills/moving.ts');
const row = () => import('./drills/row.ts');
/** What makes drills of each kind, so that a page fetches it for its own kind and for no other. */
const MAKERS: Readonly<Record<ExerciseId, () => Promise<{ readonly make: Maker }>>> = {
  slash: moving,
  pivot: moving,
  angle: moving,
  split: moving,
  join: () => import('./drills/join.ts'),
  finish: () => import('./drills/finish.ts'),
  fullness: () => import('./drills/fullness.ts'),
  parallel: row,
  several: row,
  princess: () => import('./drills/princess.ts'),
  line: () => import('./drills/line.ts'),
  block: () => import('./drills/block.ts'),
  ready: () => import('./drills/ready.ts'),
};

/** The block of a demo figure in a form, drafted while the site was built. */
async function blockOf(figure: string, form: string): Promise<Block> {
  const answer = await fetch(resolve('/practice/blocks/[figure]/[form].json', { figure, form }));
  if (!answer.ok) throw new Error(`the block could not be fetched: ${answer.status}`);
  return (await answer.json()) as Block;
}

/**
 * Works a drill out, with those hints and its lengths in the learner's units. Rejects where its block, or what makes drills of its kind, cannot be
 * fetched.
 */
export async function readyDrill(
  drill: Drill,
  hints: DrillHints,
  units: Settings['units'],
): Promise<ReadyDrill> {
  const begun = beginningOf(drill);
  const [{ make }, block] = await Promise.all([MAKERS[drill.exercise](), blockOf(begun.figure, begun.form)]);
  const made = make(begun, block, hints, units);
  // The texts of later steps come with the first mark; where one of them is what is begun with, it is wanted at once.
  const lesson = made.lesson.given ? await made.whole() : made.lesson;
  return { drill, ...made, lesson, block, terms: drillTerms(drill) };
}
