import { slashesFrom, slashesOn } from '../../grading/slashes.ts';
import type { Fold, FullnessKind } from '../../pattern/types.ts';
import { numberOf, textOf, type Hand, type Worked } from './give.ts';

const listOf = (value: unknown): readonly unknown[] =>
  Array.isArray(value) ? value : value === undefined ? [] : [value];

/** The darts meant: `darts` by their ids, or the slashes from `edges`, whatever they are called. */
function dartsOf({ rule, work }: Hand): readonly string[] {
  const named = listOf(rule.worked?.['darts']).map(String);
  if (named.length > 0) return named;
  const edges = listOf(rule.worked?.['edges']).map(String);
  return slashesFrom(slashesOn(work), edges).flatMap((slash) => slash?.dart?.id ?? []);
}

/** A dart that was backed off by so nearly the same is left as it is, mm. */
const SAME = 1e-6;

/** How far a dart is backed off as it lies, mm. */
const offNow = ({ work }: Hand, dart: string): number | undefined =>
  work.pieces.flatMap(({ finished }) => finished ?? []).find((one) => one.dart === dart)?.by;

/** Backs darts off and caps them: `worked: {by: "finish-darts", darts or edges, off: mm or a list of mm, trued?, fold?}`. */
export const finishDarts: Worked = (hand) => {
  const off = listOf(hand.rule.worked?.['off']).map(Number);
  const folds = listOf(hand.rule.worked?.['fold']).map(String);
  dartsOf(hand).forEach((dart, i) => {
    const by = off[i] ?? off[0] ?? 25.4;
    const now = offNow(hand, dart);
    if (now === undefined || Math.abs(now - by) > SAME) hand.give({ do: 'back-off', dart, by });
    if (hand.rule.worked?.['trued'] === true) hand.give({ do: 'true-legs', dart });
    const fold = (folds[i] ?? folds[0]) as Fold | undefined;
    if (fold !== undefined) hand.give({ do: 'cap', dart, fold });
  });
};

/** Makes an opening into fullness: `worked: {by: "fullness", edges or darts, as, before, after, tucks?}`. */
export const makeFullness: Worked = (hand) => {
  const as = textOf(hand.rule, 'as') as FullnessKind;
  const [before, after] = [numberOf(hand.rule, 'before'), numberOf(hand.rule, 'after')];
  for (const dart of dartsOf(hand)) {
    const own = { do: 'fullness', dart, as, before, after } as const;
    hand.give(as === 'tucks' ? { ...own, tucks: numberOf(hand.rule, 'tucks') } : own);
  }
};

/** Parts the front along the slash from `edges` and the dart `with`: `worked: {by: "part-at-darts", edges, with}`. */
export const partAtDarts: Worked = (hand) => {
  const [slash] = dartsOf(hand);
  if (slash !== undefined) hand.give({ do: 'part-at-darts', darts: [slash, textOf(hand.rule, 'with')] });
};
