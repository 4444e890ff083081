import { PHASES } from '../recipe/commands/known.ts';
import type { Attempt, Command, CommandName, Recipe } from '../recipe/types.ts';
import type { Lesson, LessonStep } from './types.ts';

/** The free bench has one step, in which everything may be done and nothing is marked. */
export const BENCH = 'bench';

/** All tools that there are. */
export const ALL_TOOLS = Object.keys(PHASES) as readonly CommandName[];

const step: LessonStep = {
  id: BENCH,
  title: 'Free bench',
  skill: BENCH,
  tools: ALL_TOOLS,
  text: [],
  hints: [],
  cautions: [],
  checks: [],
};

/** The bench as a lesson, for the machine that lessons run on: one step with all tools and no checks. */
export const benchLesson: Lesson = {
  id: BENCH,
  title: 'Free bench',
  summary: '',
  content: 1,
  figure: 'F2',
  fabrics: ['knit', 'woven'],
  needs: [],
  steps: [step],
};

// A command's step belongs to the lesson it was given in; on the bench all are of one step.
const without = ({ step: _, ...command }: Command): Command => command as Command;

/** A recipe, or an attempt at any lesson, as what is worked on the bench: the same commands in the order of their list. */
export const toBench = ({ format, version, block, fabric, seed, commands }: Recipe): Attempt => ({
  format,
  version,
  block,
  fabric,
  seed,
  lesson: { id: BENCH, content: benchLesson.content },
  commands: commands.map((command) => ({ ...command, step: BENCH })),
});

/** What was done on the bench as a plain recipe, which belongs to no lesson. */
export const fromBench = ({ format, version, block, fabric, seed, commands }: Recipe): Recipe => ({
  format,
  version,
  block,
  fabric,
  seed,
  commands: commands.map(without),
});
