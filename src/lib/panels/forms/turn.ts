import { frontOf } from '../../machines/scene.ts';
import { pairsOn, pinPlace, type Pair } from '../../machines/tools/pairs.ts';
import { nextSlash, numberedOn } from '../../machines/tools/slashes.ts';
import { chainEnd } from '../../geometry/chain.ts';
import { sub } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import { landmark, legsOf } from '../../pattern/outline.ts';
import { isSlash } from '../../pattern/slash-line.ts';
import type { Dart, Piece } from '../../pattern/types.ts';
import type { Anchor, TurnBy, Work } from '../../recipe/types.ts';
import { dartOn, madeDart, theDart, theMadeDart } from '../../strings/names.ts';
import { formatAngle } from '../../strings/units.ts';
import { placeFields, placeTyped } from './edge-place.ts';
import {
  angle,
  choice,
  length,
  missingNumber,
  number,
  percent,
  text,
  type Field,
  type FormMaker,
  type Option,
  type Values,
} from './form.ts';
import { beside, nameField, nameProblem } from './slashes.ts';

/** The boxes for what turns, about which point, and how far. */
function turnFields(freed: string, rest: string, pin: string): Field[] {
  return [
    choice('part', 'Turn', [
      { value: 'freed', label: freed },
      { value: 'rest', label: rest },
    ]),
    length('dx', `Pin: from ${pin}, + to the wearer's left`),
    length('dy', `Pin: from ${pin}, + downwards`),
    choice('by', 'How far', [
      { value: 'meet', label: 'until the legs meet' },
      { value: 'angle', label: 'by a typed angle' },
      { value: 'share', label: 'by a share of the dart' },
    ]),
    { ...angle('angle', 'Angle, + clockwise'), when: { field: 'by', is: 'angle' } },
    { ...percent('share', 'Share of the dart as it is open now'), when: { field: 'by', is: 'share' } },
  ];
}

/** What of these boxes is empty or no number. */
function turnProblem(values: Values, fields: readonly Field[]): string | undefined {
  const by = text(values, 'by');
  return missingNumber(values, ['dx', 'dy', ...(by === 'meet' ? [] : [by])], fields);
}

function byOf(values: Values): TurnBy {
  const by = text(values, 'by');
  if (by === 'angle') return { angle: number(values, 'angle') };
  return by === 'share' ? { share: number(values, 'share') / 100 } : { until: 'legs-meet' };
}

/** The pin as it was typed, so far from the bust point of a dart or from its tip, where that is drawn beside it. */
const aboutOf = (values: Values, dart: Dart, off: Point): Anchor =>
  beside({ landmark: dart.bustPoint, dx: off.x, dy: off.y }, number(values, 'dx'), number(values, 'dy'));

interface Way {
  readonly value: string;
  readonly label: string;
  readonly dart: Dart;
  readonly pair: Pair | undefined;
}

/** What can be closed on the table: a dart into another one, or one that was slashed along a style line. */
function waysOn(work: Work, piece: Piece): Way[] {
  const pairs = pairsOn(piece);
  const on = numberedOn(
    work,
    pairs.flatMap(({ dart, into }) => [dart.id, into.id]),
  );
  if (pairs.length > 0)
    return pairs.map((pair) => ({
      value: `${pair.dart.id}>${pair.into.id}`,
      label: `close ${dartOn(theMadeDart(pair.dart.id), on[pair.dart.id])}, open ${dartOn(theDart(pair.into.id), on[pair.into.id])}`,
      dart: pair.dart,
      pair,
    }));
  return piece.hinges.flatMap(({ dart: id }) => {
    const dart = piece.darts.find((one) => one.id === id);
    return dart && !isSlash(dart) && dart.state !== 'closed'
      ? [{ value: id, label: `close ${theMadeDart(id)}`, dart, pair: undefined }]
      : [];
  });
}

export const turn: FormMaker = (work) => {
  const ways = work.pieces.filter(({ id }) => !id.startsWith('back')).flatMap((piece) => waysOn(work, piece));
  if (ways.length === 0) return [];
  // Into a slash that nothing was turned into yet before all others.
  const fresh = ways.find(({ pair }) => pair && isSlash(pair.into) && pair.into.residual === 0);
  const options = ways.map(({ value, label }): Option => ({ value, label }));
  const open = [...new Map(ways.map(({ dart }) => [dart.id, dart.residual]))];
  const fields: Field[] = [
    choice('dart', 'To', options, fresh?.value),
    ...turnFields('the freed part', 'the rest of the piece', 'the bust point'),
  ];
  return [
    {
      id: 'turn',
      title: 'Turn a part about the pin',
      note: `Open: ${open.map(([id, residual]) => `${madeDart(id)} ${formatAngle(residual)}`).join(', ')}.`,
      fields,
      submit: 'Turn',
      build: (values) => {
        const problem = turnProblem(values, fields);
        if (problem) return problem;
        const way = ways.find(({ value }) => value === text(values, 'dart'));
        if (!way) return 'To: a dart is expected.';
        const off = (way.pair && pinPlace(way.pair)?.off) ?? { x: 0, y: 0 };
        return {
          do: 'turn',
          dart: way.dart.id,
          ...(way.pair && { into: way.pair.into.id }),
          part: text(values, 'part'),
          about: aboutOf(values, way.dart, off),
          by: byOf(values),
        };
      },
    },
  ];
};

/** How the tip of a dart lies off its bust point, mm. */
function tipOff(front: Piece, dart: Dart): Point {
  const legs = legsOf(front, dart);
  const bust = landmark(front, dart.bustPoint);
  return legs && bust ? sub(chainEnd(legs.into.chain), bust) : { x: 0, y: 0 };
}

export const pivot: FormMaker = (work, _fabric, units) => {
  const front = frontOf(work);
  if (!front || !work.opened || front.seam) return [];
  const darts = front.darts.filter((dart) => dart.state === 'working' && dart.residual !== 0);
  if (darts.length === 0) return [];
  const fields: Field[] = [
    choice(
      'dart',
      'To close',
      darts.map(({ id }) => ({ value: id, label: theMadeDart(id) })),
    ),
    ...placeFields(front, units).map((field) =>
      field.id === 'from' ? { ...field, label: 'Mark on the' } : field,
    ),
    ...turnFields('the part without centre front', 'the other one', "the dart's tip"),
    nameField(nextSlash(work, 'new')),
  ];
  return [
    {
      id: 'pivot',
      title: 'Mark, pin, swing and trace',
      fields,
      submit: 'Swing and trace',
      build: (values) => {
        const slash = text(values, 'slash').trim();
        const problem = nameProblem(slash) ?? turnProblem(values, fields);
        if (problem) return problem;
        const from = placeTyped(front, values, units);
        if (typeof from === 'string') return from;
        const dart = darts.find(({ id }) => id === text(values, 'dart'));
        if (!dart) return 'To close: a dart is expected.';
        return {
          do: 'pivot',
          dart: dart.id,
          slash,
          from,
          about: aboutOf(values, dart, tipOff(front, dart)),
          by: byOf(values),
          part: text(values, 'part') === 'rest' ? 'rest' : 'freed',
        };
      },
    },
  ];
};
