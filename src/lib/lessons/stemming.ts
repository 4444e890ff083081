import { gradeLesson } from '../grading/grade.ts';
import type { Finding, Mark, Unit } from '../grading/types.ts';
import { apply } from '../recipe/apply.ts';
import { replay } from '../recipe/replay.ts';
import type { Attempt, Command } from '../recipe/types.ts';
import { counterparts, namedAs } from './counterpart.ts';
import type { LessonStep } from './types.ts';
import { workedStep } from './worked/index.ts';

/** What one wrong finding owes to a command. */
export interface Stemming {
  readonly step: string;
  /** Place of the finding in its step's mark. */
  readonly finding: number;
  readonly code: string;
  readonly unit: Unit;
  /** How far off it is, signed, mm or radians as `unit` says; undefined for a matter of yes or no. */
  readonly off: number | undefined;
  /** How much of `off` would not be there without the command, signed; undefined as above. */
  readonly amount: number | undefined;
  /** The same as a share of `off`; 0 or 1 for a matter of yes or no. May be below 0 or above 1 where faults work against each other. */
  readonly share: number;
}

/** How far a finding is from what was expected, signed; 0 inside of a range; undefined where there are no numbers. */
export function offBy({ measured, expected }: Finding): number | undefined {
  if (measured === undefined || expected === undefined) return undefined;
  if (typeof expected === 'number') return measured - expected;
  const [low, high] = expected;
  return measured < low ? measured - low : measured > high ? measured - high : 0;
}

/** The worked commands that would have stood in the place of the one at `index`; none where nothing was to be done. */
function insteadOf(steps: readonly LessonStep[], attempt: Attempt, index: number): readonly Command[] {
  const command = attempt.commands[index]!;
  const step = steps.find(({ id }) => id === command.step);
  if (!step) return [];
  const now = replay({ ...attempt, commands: attempt.commands.slice(0, index) }).work;
  const worked = workedStep(step, now, attempt.fabric);
  const found = counterparts([command], worked).get(command);
  if (!found) return [];
  const named = namedAs(found, command);
  if ('work' in apply(now, named)) return [named];
  // It needs what is worked before it.
  return [...worked.slice(0, worked.indexOf(found)), named];
}

/**
 * What every wrong finding owes to the command at `index`: the attempt is marked once more with the worked command in its place and all
 * later ones as they were. The attempt is one by the order of its steps, `marks` are those of its first steps. Findings of which then
 * nothing can be told are left out. Throws as `gradeLesson`.
 */
export function stemmingFrom(
  steps: readonly LessonStep[],
  attempt: Attempt,
  index: number,
  marks: readonly Mark[],
): readonly Stemming[] {
  const { commands } = attempt;
  const instead = insteadOf(steps, attempt, index);
  const others = gradeLesson(
    { steps },
    { ...attempt, commands: [...commands.slice(0, index), ...instead, ...commands.slice(index + 1)] },
  );
  return marks.flatMap((mark, i) => compared(mark, others[i]!));
}

const keyOf = ({ code, about }: Finding): string => `${code} ${JSON.stringify(about ?? {})}`;

/** The same finding of another mark: the same code about the same, or else the one in its place among those of its code. */
function sameIn(other: Mark, mark: Mark, finding: Finding): Finding | undefined {
  const exact = other.findings.find((one) => keyOf(one) === keyOf(finding));
  if (exact) return exact;
  const alike = (list: Mark): readonly Finding[] => list.findings.filter(({ code }) => code === finding.code);
  return alike(other)[alike(mark).indexOf(finding)];
}

function compared(mark: Mark, other: Mark): readonly Stemming[] {
  return mark.findings.flatMap((finding, place): Stemming[] => {
    if (finding.state !== 'wrong') return [];
    const { code, unit } = finding;
    const same = sameIn(other, mark, finding);
    // Something else is missing without it: then nothing can be said of this.
    if (same?.state === 'missing') return [];
    if (!same && other.findings.some(({ state }) => state === 'missing')) return [];
    const head = { step: mark.step, finding: place, code, unit };
    const off = offBy(finding);
    const without = same ? offBy(same) : 0;
    if (off === undefined || off === 0 || without === undefined) {
      const share = !same || same.state !== 'wrong' ? 1 : 0;
      return [{ ...head, off: undefined, amount: undefined, share }];
    }
    return [{ ...head, off, amount: off - without, share: (off - without) / off }];
  });
}
