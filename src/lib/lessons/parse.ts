import * as v from 'valibot';
import { FIGURES } from '../pattern/figures.ts';
import { PHASES } from '../recipe/commands/known.ts';
import { problemOf, type Problem } from '../recipe/problem.ts';
import type { CommandName } from '../recipe/types.ts';
import type { Lesson, Param } from './types.ts';

const id = v.pipe(v.string(), v.regex(/^[a-z0-9][a-z0-9-]{0,60}$/));
/** A skill is one word, or dart place / method / finishing. */
const skill = v.pipe(v.string(), v.regex(/^[a-z0-9][a-z0-9-]{0,60}(\/[a-z0-9-]{1,40}){0,2}$/));
const line = v.pipe(v.string(), v.maxLength(200));
const code = v.pipe(v.string(), v.regex(/^[a-z0-9-]+(\/[a-z0-9-]+)?$/));
const command = v.custom<CommandName>(
  (value) => typeof value === 'string' && Object.hasOwn(PHASES, value),
  'the name of a command',
);

const checkSpec = v.strictObject({
  check: code,
  tolerances: v.exactOptional(
    v.record(v.string(), v.strictObject({ value: v.pipe(v.number(), v.minValue(0)), reason: code })),
  ),
  numbers: v.exactOptional(v.record(v.string(), v.number())),
  names: v.exactOptional(v.record(v.string(), v.union([v.string(), v.array(v.string())]))),
});

const param: v.GenericSchema<unknown, Param> = v.lazy(() =>
  v.union(
    [v.string(), v.number(), v.boolean(), v.array(param), v.record(v.string(), param)],
    'a text, a number, true or false, a list or an object of such',
  ),
);

const stepSchema = v.strictObject({
  id,
  title: line,
  skill,
  tools: v.array(command),
  text: v.pipe(v.array(line), v.maxLength(60)),
  hints: v.array(v.strictObject({ codes: v.array(code), rungs: v.pipe(v.array(line), v.minLength(1)) })),
  cautions: v.array(id),
  checks: v.array(checkSpec),
  worked: v.exactOptional(v.objectWithRest({ by: id }, param)),
});

const lessonSchema = v.strictObject({
  id,
  number: v.exactOptional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(99))),
  title: line,
  summary: v.pipe(v.string(), v.maxLength(400)),
  content: v.pipe(v.number(), v.integer(), v.minValue(1)),
  figure: v.picklist(Object.keys(FIGURES)),
  form: v.exactOptional(v.picklist(['side', 'two-dart', 'waist'])),
  fabrics: v.pipe(v.array(v.picklist(['knit', 'woven'])), v.minLength(1)),
  needs: v.array(id),
  steps: v.pipe(v.array(id), v.minLength(1)),
});

export type ParsedLesson = { readonly ok: Lesson } | { readonly problems: readonly Problem[] };

/**
 * A lesson from its `lesson.json` and the `step.json` of each of its steps, in any order. All or nothing: what is wrong
 * is told with the step's id in front of the path. Never throws.
 */
export function parseLesson(lesson: unknown, steps: readonly unknown[]): ParsedLesson {
  const head = v.safeParse(lessonSchema, lesson);
  if (!head.success) return { problems: head.issues.map(problemOf) };
  const problems: Problem[] = [];
  const byId = new Map<string, Lesson['steps'][number]>();
  steps.forEach((data, index) => {
    const step = v.safeParse(stepSchema, data);
    if (step.success) byId.set(step.output.id, step.output);
    else
      problems.push(
        ...step.issues.map(problemOf).map((p) => ({ ...p, path: `steps[${nameOf(data, index)}].${p.path}` })),
      );
  });
  const ordered = head.output.steps.flatMap((step) => byId.get(step) ?? []);
  if (problems.length === 0)
    for (const step of head.output.steps)
      if (!byId.has(step)) problems.push({ path: 'steps', expected: `the step ${step}`, found: 'nothing' });
  return problems.length > 0 ? { problems } : { ok: { ...head.output, steps: ordered } };
}

function nameOf(data: unknown, index: number): string {
  const given = typeof data === 'object' && data !== null && 'id' in data ? data.id : undefined;
  return typeof given === 'string' ? given.slice(0, 40) : String(index);
}
