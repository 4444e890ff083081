import { gradeStep } from '../../../src/lib/grading/grade.ts';
import type { Attempt } from '../../../src/lib/recipe/types.ts';
import '../../../src/lib/recipe/commands/index.ts';
import type { Kind } from './kinds/kind.ts';
import { Chance, type Device } from './noise.ts';
import { Person } from './person.ts';

/** One attempt at a kind of gesture with a device, marked as any other; the same seed is the same person with the same mind. */
export function attempt({ task, rule, work }: Kind, device: Device, seed: number): boolean {
  const person = new Person(task, device, seed * 7919 + 13);
  work(person, new Chance(seed * 104_729 + 5));
  const { commands, work: after } = person;
  const made: Attempt = {
    format: 'pin-and-pivot/recipe',
    version: 1,
    block: { figure: 'F2' },
    fabric: task.fabric,
    seed: 0,
    lesson: { id: rule.id, content: 1 },
    commands,
  };
  const context = {
    before: task.work,
    after,
    commands,
    unfollowed: [],
    fabric: task.fabric,
    attempt: made,
  };
  return gradeStep(rule, context).verdict === 'accepted';
}

/** What was accepted of so many attempts at a kind with each device, by the same persons; other ones for each kind. */
export interface Row {
  readonly kind: string;
  readonly attempts: number;
  readonly accepted: readonly number[];
}

/** Tries each kind so many times with each device; the seeds begin at `first`. */
export function tried(
  kinds: readonly Kind[],
  devices: readonly Device[],
  attempts: number,
  first: number,
): Row[] {
  return kinds.map((kind, nth) => {
    const accepted = devices.map((device) => {
      let right = 0;
      for (let i = 0; i < attempts; i++) if (attempt(kind, device, first + 10_007 * nth + i)) right++;
      return right;
    });
    return { kind: kind.name, attempts, accepted };
  });
}

/** All kinds in one, as percentages of acceptance, a number a device. */
export function inSum(rows: readonly Row[]): number[] {
  const whole = rows.reduce((sum, row) => sum + row.attempts, 0);
  return (rows[0]?.accepted ?? []).map(
    (_, i) => (100 * rows.reduce((sum, row) => sum + row.accepted[i]!, 0)) / whole,
  );
}
