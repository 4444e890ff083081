import { apply } from '../recipe/apply.ts';
import type { Command, Work } from '../recipe/types.ts';
import { ofTheSame, takesAway } from './counterpart.ts';

/** The table that commands make, and how many of them could not be followed. */
function made(before: Work, commands: readonly Command[]): { readonly work: Work; readonly refused: number } {
  let work = before;
  let refused = 0;
  for (const command of commands) {
    const next = apply(work, command);
    if ('work' in next) work = next.work;
    else refused++;
  }
  return { work, refused };
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

/** Lines by their ids: which of them was drawn first says nothing. */
function byId(list: unknown): unknown {
  if (!Array.isArray(list)) return list;
  return Object.fromEntries(list.map((one: { readonly id: string }) => [one.id, one]));
}

/** Whether two values hold the same, bit for bit. */
function same(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (!isRecord(a) || !isRecord(b)) return false;
  if (Array.isArray(a) && Array.isArray(b) && a.length !== b.length) return false;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  for (const key of keys) {
    const [one, other] = key === 'lines' ? [byId(a[key]), byId(b[key])] : [a[key], b[key]];
    if (!same(one, other)) return false;
  }
  return true;
}

/**
 * Places of the commands whose effect stands, of those given in one step from the table before it. One that was done over, or taken away
 * again with all that it made, has left nothing: without it the table is the same from then on, and every later command can still be followed. Of
 * one and the same thing done twice the last one stands.
 */
export function standing(before: Work, commands: readonly Command[]): readonly number[] {
  let left = commands.map((_, i) => i);
  // From the end backwards: what hangs on a thing that was done over goes before it.
  for (let i = commands.length - 1; i >= 0; i--) {
    const command = commands[i]!;
    const later = left.find(
      (j) => j > i && (ofTheSame(commands[j]!, command) || takesAway(commands[j]!, command)),
    );
    if (later === undefined) continue;
    const gone = takesAway(commands[later]!, command) ? [i, later] : [i];
    const upTo = left.filter((j) => j <= later);
    const whole = made(
      before,
      upTo.map((j) => commands[j]!),
    );
    const without = made(
      before,
      upTo.filter((j) => !gone.includes(j)).map((j) => commands[j]!),
    );
    if (without.refused <= whole.refused && same(whole.work, without.work))
      left = left.filter((j) => !gone.includes(j));
  }
  return left;
}
