import { TAU } from '../../geometry/trig.ts';
import type { BustPoint } from '../../grading/bench/bust-points.ts';
import type { Invariants } from '../../grading/bench/invariants.ts';
import { bothLengths, leftoverWords, pairName, pairWords } from '../../strings/bench.ts';
import { dartName, nameOf, pieceName, theDart } from '../../strings/names.ts';
import { formatArea } from '../../strings/area.ts';
import { formatAngle, formatLength, type Units } from '../../strings/units.ts';

export interface InvariantRow {
  /** Stays while the thing stays; for the list and for tests. */
  readonly id: string;
  readonly label: string;
  readonly value: string;
  /** `kept`: it is what it must be; `off`: it is not; absent: nothing is said of it. */
  readonly state?: 'kept' | 'off';
  /** Read with the row above it. */
  readonly under?: true;
}

export interface InvariantGroup {
  readonly id: 'angle' | 'area' | 'seams' | 'leftover';
  readonly title: string;
  readonly rows: readonly InvariantRow[];
}

/** Less than this is rounding: radians, mm², mm. */
const NO_ANGLE = 1e-9;
const NO_AREA = 1e-3;
const NO_LENGTH = 0.005;

/** The invariants as they are read on the bench. */
export function invariantRows(of: Invariants, units: Units): readonly InvariantGroup[] {
  const { area } = of;
  const kept = Math.abs(area.sheets - area.expected) < NO_AREA;
  return [
    {
      id: 'angle',
      title: 'Round the bust points',
      rows: of.bustPoints.flatMap((bust) => bustRows(bust, units)),
    },
    {
      id: 'area',
      title: 'Paper',
      rows: [
        {
          id: 'sheets',
          label: 'Front, all sheets',
          value: formatArea(area.sheets, units),
          state: kept ? 'kept' : 'off',
        },
        {
          id: 'block',
          label: 'The block, its darts drawn as here',
          value: formatArea(area.expected, units),
          under: true,
        },
        ...(Math.abs(area.redrawn) < NO_AREA
          ? []
          : [
              {
                id: 'redrawn',
                label: 'Redrawn edges',
                value: formatArea(area.redrawn, units, true),
                under: true as const,
              },
            ]),
      ],
    },
    {
      id: 'seams',
      title: 'Sewn together',
      rows: of.seams.flatMap((pair): InvariantRow[] => {
        const id = `${pair.kind}:${pair.id}`;
        const fits = Math.abs(pair.worst) < NO_LENGTH;
        return [
          { id, label: pairName(pair), value: pairWords(pair, units), state: fits ? 'kept' : 'off' },
          {
            id: `${id}:lengths`,
            label: pair.kind === 'seam' ? lengthsOf(pair.id) : 'one and the other',
            value: bothLengths(pair.a, pair.b, units),
            under: true,
          },
        ];
      }),
    },
    {
      id: 'leftover',
      title: 'Leftover and fullness',
      rows: of.leftovers.map((one) => ({
        id: `${one.piece}:${one.dart}`,
        label: `${pieceName(one.piece)}, ${theDart(one.dart)}`,
        value: `${formatLength(one.excess, units)}, ${leftoverWords(one)}`,
      })),
    },
  ];
}

const lengthsOf = (seam: string): string =>
  seam === 'style-line' ? 'one side and the other' : 'front and back';

function bustRows({ id, paper, expected, darts, beside, short }: BustPoint, units: Units): InvariantRow[] {
  const kept = expected !== undefined && Math.abs(paper - expected) < NO_ANGLE;
  return [
    {
      id,
      label: nameOf(id),
      value: `${formatAngle(TAU - paper)} open, ${formatAngle(paper)} of paper`,
      ...(expected === undefined ? {} : { state: kept ? ('kept' as const) : ('off' as const) }),
    },
    ...(expected === undefined
      ? []
      : [
          {
            id: `${id}:block`,
            label: 'The block’s darts that reach it',
            value: `${formatAngle(TAU - expected)}`,
            under: true as const,
          },
        ]),
    ...darts.map((dart): InvariantRow => ({
      id: `${id}:${dart.id}`,
      label: dartName(dart.id),
      value:
        (Math.abs(dart.open) < NO_ANGLE ? 'closed' : `${formatAngle(dart.open)} open`) +
        (dart.slip > NO_LENGTH ? `, its sheets ${formatLength(dart.slip, units)} off the pin` : ''),
      under: true,
    })),
    ...(Math.abs(beside) < NO_ANGLE
      ? []
      : [
          {
            id: `${id}:beside`,
            label: 'Along a connector, or between pieces',
            value: `${formatAngle(beside)} open`,
            under: true as const,
          },
        ]),
    ...short.map((dart): InvariantRow => ({
      id: `${id}:short:${dart}`,
      label: dartName(dart),
      value: 'ends short of it',
      under: true,
    })),
  ];
}
