import type { Anchor, Command } from '../../../src/lib/recipe/types.ts';
import type { Route, Row } from './other-hands.ts';

/* Other hands than the generator's for pieces that are made ready to be sewn. What was given is left as it is. */

/** Works each step that has one in its own way. */
const inSteps =
  (ways: Readonly<Record<string, (own: Row) => Row>>): Route =>
  (_v, worked) =>
    [...new Set(worked.map(({ step }) => step!))].flatMap((id) => {
      const own = worked.filter(({ step }) => step === id);
      return ways[id]?.(own) ?? own;
    });

const named = (row: Row, ...names: readonly Command['do'][]): Row => row.filter((c) => names.includes(c.do));

/** The commands about one opening after the other: each begins with its bridge. */
function openings(row: Row): readonly Row[] {
  const all: Command[][] = [];
  for (const c of row) {
    if (c.do === 'copy') continue;
    if (c.do === 'bridge') all.push([]);
    all.at(-1)!.push(c);
  }
  return all;
}

/**
 * The other cloth first and the upper piece before the lower; widths from the last edge to the first, the corners square; the grain before the labels,
 * each written wrong at first; the sides walked before the style line, with another finding said at first.
 */
export const lastToFirst = inSteps({
  treat: (own) => [...named(own, 'copy'), ...[...openings(own)].reverse().flat()],
  allowances: (own) => [
    ...[...named(own, 'allow')].reverse(),
    ...named(own, 'corner').map((c): Command => (c.do === 'corner' ? { ...c, form: 'square' } : c)),
    ...named(own, 'carry-notches'),
  ],
  'label-and-grain': (own) => [
    ...named(own, 'grain'),
    ...named(own, 'label').flatMap((c): Row =>
      c.do === 'label' ? [{ ...c, name: 'Piece', cut: 3 }, c] : [],
    ),
  ],
  'walk-the-seams': (own) =>
    [...own].reverse().flatMap((c): Row => (c.do === 'walk' ? [{ ...c, says: 'differs' }, c] : [])),
});

/** The set that was cut first is for the woven, and the copy for the knit. */
export const copiedForKnit: Route = (_v, worked) => {
  const id = (of: string): string => (of.endsWith('@woven') ? of.replace(/@woven$/, '') : `${of}@knit`);
  const place = (at: Anchor): Anchor => ('inside' in at ? { ...at, inside: id(at.inside) } : at);
  const from = worked.findIndex((c) => c.do === 'copy');
  return worked.map((c, i): Command => {
    if (i < from) return c;
    if (c.do === 'copy') return { ...c, as: 'knit' };
    const own = 'piece' in c ? ({ ...c, piece: id(c.piece) } as Command) : c;
    return own.do === 'grain' ? { ...own, at: place(own.at) } : own;
  });
};
