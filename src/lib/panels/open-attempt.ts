import { resolve } from '$app/paths';
import { toFragment } from '../lessons/drills/link.ts';
import { misfit, readHandedIn } from '../lessons/handed-in.ts';
import { givenUnchanged } from '../lessons/given-unchanged.ts';
import { allSteps, type Lesson, type StepToWork } from '../lessons/types.ts';
import { drillOfId } from '../practice/drill-skills.ts';
import type { Problem } from '../recipe/problem.ts';
import type { Attempt } from '../recipe/types.ts';
import { partSaid } from '../strings/attempt.ts';
import { EXERCISE_NAMES } from '../strings/drill-words/kinds.ts';
import type { RulerUnits } from '../strings/units.ts';
import { fetchFor } from '../table/phases/index.ts';
import { readyDrill } from './drill.ts';

/** An attempt that can be marked and shown. */
export interface OpenAttempt {
  readonly attempt: Attempt;
  readonly lesson: Lesson;
  /** Where the lesson or drill itself is worked. */
  readonly address: string;
  /** What a drill asks, and on which terms. */
  readonly asks?: string | undefined;
  /** That it is a part of a drill, and what was given before. */
  readonly part?: string | undefined;
  /** The file claimed a mark of its own, which was not read. */
  readonly claimed: boolean;
}

export type Opened = { readonly ok: OpenAttempt } | { readonly problems: readonly Problem[] };

interface Found {
  readonly lesson: Lesson;
  readonly address: string;
  /** What a drill asks, and on which terms. */
  readonly asks?: string;
  /** That it is a part of a drill; `unchanged`: what was given before is what the drill gives. */
  readonly part?: (unchanged: boolean) => string | undefined;
}

/** The lesson or drill of that id. Drills follow from their id, without hints; the rules of a lesson are fetched. */
async function lessonOf(id: string, units: RulerUnits): Promise<Found | Problem> {
  const path = 'lesson.id';
  const drill = drillOfId(id);
  if (drill) {
    const { whole, terms } = await readyDrill(drill, {}, units);
    const lesson = await whole();
    const titles = (steps: readonly StepToWork[] = []) => steps.map(({ title }) => title);
    return {
      lesson,
      address: `${resolve('/practice')}#${toFragment(drill)}`,
      asks: `${lesson.summary} ${terms}`,
      part: (unchanged) =>
        partSaid(
          EXERCISE_NAMES[drill.exercise],
          titles(lesson.given),
          titles(lesson.steps),
          drill.step !== undefined,
          unchanged,
        ),
    };
  }
  const unknown = { path, expected: 'a lesson of the course, or a drill', found: id };
  if (!/^[a-z0-9-]+$/.test(id) || id.startsWith('drill-')) return unknown;
  const answer = await fetch(resolve('/lesson/[lesson]/rules.json', { lesson: id })).catch(() => undefined);
  if (!answer) return { path, expected: 'a lesson whose rules can be fetched now', found: 'no connection' };
  if (!answer.ok) return unknown;
  return { lesson: (await answer.json()) as Lesson, address: resolve('/lesson/[lesson]', { lesson: id }) };
}

/** Makes an attempt ready to be watched from its text: all or nothing, with what is wrong. Never rejects. */
export async function openAttempt(text: string, units: RulerUnits): Promise<Opened> {
  const parsed = readHandedIn(text);
  if ('problems' in parsed) return parsed;
  const { attempt, claimed } = parsed.ok;
  try {
    const found = await lessonOf(attempt.lesson.id, units);
    if ('path' in found) return { problems: [found] };
    const problem = misfit(attempt, found.lesson);
    if (problem) return { problems: [problem] };
    const { lesson, address, asks, part } = found;
    const tools = allSteps(lesson).flatMap((step) => step.tools);
    await fetchFor([...tools, ...attempt.commands.map(({ do: name }) => name)]);
    const said = part?.(givenUnchanged(lesson, attempt));
    return { ok: { attempt, claimed, lesson, address, asks, part: said } };
  } catch (error) {
    return { problems: [{ path: '', expected: 'an attempt that can be shown', found: String(error) }] };
  }
}
