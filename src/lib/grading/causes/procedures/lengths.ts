import type { Command } from '../../../recipe/types.ts';
import type { Procedure, Suspect } from './types.ts';

/** A command with its lengths changed; the same command where it has none. */
function withLengths(c: Command, change: (mm: number) => number): Command {
  switch (c.do) {
    case 'back-off':
      return { ...c, by: change(c.by) };
    case 'allow':
      return { ...c, width: change(c.width) };
    case 'smooth-seam':
      return { ...c, reach: change(c.reach) };
    case 'fullness':
      return { ...c, before: change(c.before), after: change(c.after) };
    case 'read':
      return c.what === 'dart-angle' ? c : { ...c, value: change(c.value) };
    default:
      return c;
  }
}

const lengthsOf = (c: Command): readonly number[] => {
  const found: number[] = [];
  withLengths(c, (mm) => (found.push(mm), mm));
  return found;
};

/** What a length is the length of: the command without its lengths. */
const about = (c: Command): string => JSON.stringify(withLengths(c, () => 0));

/**
 * Lengths that are given as numbers, half of them or twice as much: all of them, or those of the step that the learner has nearer to that
 * than to what they should be. By how much is not read off the table, only which ones.
 */
export const scaleOfLength: Procedure = (s) =>
  [0.5, 2].flatMap((factor): Suspect[] => {
    let any = false;
    const commands = s.right.map((c): Command => {
      const right = lengthsOf(c)[0];
      if (right === undefined) return c;
      const key = about(c);
      const own = s.own.findLast((one) => lengthsOf(one).length > 0 && about(one) === key);
      const has = own && lengthsOf(own)[0]!;
      if (has === undefined || Math.abs(has - factor * right) >= Math.abs(has - right)) return c;
      any = true;
      return withLengths(c, (mm) => mm * factor);
    });
    return any ? [{ cause: { code: 'scale-mixed', amount: factor, unit: 'count' }, commands }] : [];
  });
