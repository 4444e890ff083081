import { chainEnd } from '../../geometry/chain.ts';
import type { Point } from '../../geometry/types.ts';
import { sewnDart } from '../../pattern/back-off.ts';
import { at, between, dimension, fact, missing, names, near, number, tolerance } from '../finding.ts';
import { slashesFrom, slashesOn } from '../slashes.ts';
import { ownFront } from '../table.ts';
import type { FinishedDart } from '../../pattern/types.ts';
import type { Work } from '../../recipe/types.ts';
import type { Check, CheckSpec, Finding } from '../types.ts';

/** A number for one dart (`least-2`), or the one for all (`least`). */
const nth = (spec: CheckSpec, name: string, i: number): number =>
  spec.numbers?.[`${name}-${i + 1}`] ?? number(spec, name);

/** Backed off by less than this, mm, the point was left where it was: three times what a hand trembles at full size (ours). */
const LEFT = 5;

/** The darts meant: those of `names.darts`, or the slashes from `names.edges` by where they begin. */
function dartIds(after: Work, spec: CheckSpec): readonly (string | undefined)[] {
  if (spec.names?.['darts'] !== undefined) return names(spec, 'darts');
  return slashesFrom(slashesOn(after), names(spec, 'edges')).map((slash) => slash?.dart?.id);
}

const finishedOf = (after: Work, dart: string): FinishedDart | undefined =>
  ownFront(after)
    .flatMap((piece) => piece.finished ?? [])
    .find((one) => one.dart === dart);

/** Its two legs are equally long, so that they can be sewn to each other; as long as nobody trued them that is only not done yet. */
function legs(after: Work, found: FinishedDart, spec: CheckSpec): Finding[] {
  const allowed = spec.tolerances?.['legs'];
  if (allowed === undefined) return [];
  const sewn = ownFront(after)
    .filter((piece) => piece.finished?.includes(found))
    .map((piece) => sewnDart(piece, found.dart))[0];
  const about = { dart: found.dart };
  const differ = sewn && sewn.legs[0] - sewn.legs[1];
  if (differ === undefined || (Math.abs(differ) > allowed.value && found.trued === undefined))
    return [missing('dart-finished/legs', { about })];
  const where = dimension(...sewn!.ends);
  return [near('dart-finished/legs', 'mm', differ, 0, allowed, { where, about })];
}

/** Its point stands as far back as this step asks; where another step asked for it, its error is told there and carried on from. */
function point(found: FinishedDart, spec: CheckSpec, i: number): Finding[] {
  if (spec.tolerances?.['point'] === undefined) return [];
  const least = nth(spec, 'least', i);
  return [
    between('dart-finished/point', 'mm', found.by, [least, nth(spec, 'most', i)], tolerance(spec, 'point'), {
      where: dimension(found.tip, found.sewnPoint),
      cause: found.by < Math.min(LEFT, least) ? { code: 'left-at-bust-point' } : undefined,
      about: { dart: found.dart },
    }),
  ];
}

/** The top of a dart's cap, where its fold meets the edge of the paper. */
function capTop(after: Work, { dart, sewnPoint }: FinishedDart): Point {
  const lines = ownFront(after).flatMap(({ parts }) => parts.flatMap((part) => part.lines));
  const fold = lines.find(({ id }) => id === `fold-${dart}`);
  return fold ? chainEnd(fold.chain) : sewnPoint;
}

/** The points one after the other: each further back than the one before, or each less far. */
function graduated(darts: readonly FinishedDart[], spec: CheckSpec): Finding[] {
  const step = spec.numbers?.['step'];
  if (step === undefined || darts.length < 2) return [];
  const sense = darts.at(-1)!.by >= darts[0]!.by ? 1 : -1;
  return darts
    .slice(1)
    .map((one, i) =>
      between(
        'dart-finished/graduated',
        'mm',
        sense * (one.by - darts[i]!.by),
        [step, number(spec, 'most-step')],
        tolerance(spec, 'point'),
        { where: dimension(darts[i]!.sewnPoint, one.sewnPoint), about: { dart: one.dart } },
      ),
    );
}

/**
 * Each dart is backed off `numbers.least` to `numbers.most` mm from what it aims at, and, where `names.fold` says which way it is pressed, has
 * the cap for that. With `numbers.step` the points stand in a slanting row, each that much (to `most-step`) further back than its
 * neighbour. With a tolerance `legs` the two legs have to be trued. Tolerances `point` and `legs` in mm.
 */
export const dartFinished: Check = ({ after }, spec) => {
  const folds = spec.names?.['fold'] === undefined ? [] : names(spec, 'fold');
  const done: FinishedDart[] = [];
  const findings = dartIds(after, spec).flatMap((id, i): Finding[] => {
    const about = { dart: id ?? `${i + 1}` };
    const found = id === undefined ? undefined : finishedOf(after, id);
    if (!found) return [missing('dart-finished/point', { about })];
    done.push(found);
    const own: Finding[] = [...point(found, spec, i), ...legs(after, found, spec)];
    const wanted = folds[i] ?? folds[0];
    if (wanted === undefined) return own;
    if (found.fold === undefined) return [...own, missing('dart-finished/cap', { about })];
    return [
      ...own,
      fact('dart-finished/cap', found.fold === wanted, {
        where: at(capTop(after, found)),
        cause: { code: 'folded-other-way' },
        about: { ...about, fold: wanted },
      }),
    ];
  });
  return [...findings, ...graduated(done, spec)];
};
