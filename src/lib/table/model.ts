import { pointAtLength, tangentAtLength } from '../geometry/chain.ts';
import { distance } from '../geometry/point.ts';
import type { Chain, Point } from '../geometry/types.ts';
import { once } from '../machines/once.ts';
import { chainOf } from '../pattern/outline.ts';
import type { Edge, InnerLine, Part, Piece } from '../pattern/types.ts';
import { notchStrokes } from '../print/notches.ts';
import { cutOf } from './boxes.ts';
import { late } from './late.ts';
import { closedPath, pathOf, segmentPath } from './paths.ts';

/** How a stroke is drawn; each is a class of the table's style sheet. */
export type Stroke =
  | 'edge'
  | 'seam'
  | 'leg'
  | 'slashed'
  | 'style'
  | 'connector'
  | 'slash'
  | 'bank'
  | 'ghost'
  | 'circle'
  | 'traced'
  | 'to-trace'
  | 'pinned'
  | 'taped'
  | 'centre'
  | 'cut'
  | 'notch'
  | 'ghost-notch'
  | 'grain'
  | 'eased'
  | 'gathered'
  | 'fold'
  | 'bust';

export interface Drawn {
  readonly key: string;
  readonly stroke: Stroke;
  readonly d: string;
}

export interface PartModel {
  readonly id: string;
  readonly fill: string;
  readonly strokes: readonly Drawn[];
}

export type Cloth = 'paper' | 'upper' | 'lower' | 'back';

export interface PieceModel {
  readonly id: string;
  readonly cloth: Cloth;
  /** Paper up to the cut line, once there is one. */
  readonly allowance: string | undefined;
  /** The whole sheet once a treatment changed its outline; before that the parts are drawn each by itself. */
  readonly sheet: string | undefined;
  readonly parts: readonly PartModel[];
  readonly strokes: readonly Drawn[];
  /** Strips of tape over closed legs. */
  readonly tapes: readonly string[];
}

const NOTCH = 6;

/** A stroke across a chain at `at` mm. */
function across(chain: Chain, at: number, half = NOTCH): string {
  const p = pointAtLength(chain, at);
  const t = tangentAtLength(chain, at);
  return segmentPath(
    { x: p.x - t.y * half, y: p.y + t.x * half },
    { x: p.x + t.y * half, y: p.y - t.x * half },
  );
}

/** The small cross that marks a bust point. */
const crossAt = ({ x, y }: Point, r = 4): string =>
  segmentPath({ x: x - r, y: y - r }, { x: x + r, y: y + r }) +
  segmentPath({ x: x - r, y: y + r }, { x: x + r, y: y - r });

/** The banks of a slash are called as it is, with a letter. */
function edgeStyle({ id, role, dart }: Edge): Stroke {
  if (role === 'dart-leg') return id === `${dart}/a` || id === `${dart}/b` ? 'bank' : 'leg';
  return role === 'style-line' || role === 'connector' ? 'slashed' : 'edge';
}

const INNER = {
  'style-line': 'style',
  connector: 'connector',
  slash: 'slash',
  taped: 'taped',
  'centre-front': 'centre',
  fold: 'fold',
} as const;

const fillOf = once((edges: Part['edges']) => closedPath(edges.map((edge) => edge.chain)));
const edgeStroke = once((edge: Edge): Drawn => ({
  key: edge.id,
  stroke: edgeStyle(edge),
  d: pathOf(edge.chain),
}));
const lineStroke = once(({ id, kind, chain }: InnerLine): Drawn => ({
  key: `in ${id}`,
  stroke: INNER[kind],
  d: pathOf(chain),
}));
const bustStrokes = once((landmarks: Part['landmarks']) =>
  Object.entries(landmarks)
    .filter(([id]) => id.endsWith('bust-point'))
    .map(([id, p]): Drawn => ({ key: id, stroke: 'bust', d: crossAt(p) })),
);
const notchesOf = once(({ chain, origin, notches }: InnerLine) =>
  notches.map(({ id, ghost, at }): Drawn => ({
    key: `notch ${id}`,
    stroke: ghost ? 'ghost-notch' : 'notch',
    d: across(chain, at - origin.from),
  })),
);

/** What is drawn of one sheet of paper. */
export const partModel = once((part: Part): PartModel => ({
  id: part.id,
  fill: fillOf(part.edges),
  strokes: [
    ...part.edges.map(edgeStroke),
    ...part.lines.map(lineStroke),
    ...bustStrokes(part.landmarks),
    ...part.lines.flatMap(notchesOf),
  ],
}));

/** What is drawn of a line by itself. */
export const lineStrokes = (line: InnerLine): readonly Drawn[] => [lineStroke(line), ...notchesOf(line)];

export function clothOf(piece: Piece): Cloth {
  const base = piece.id.split('@')[0]!;
  if (base.startsWith('front-')) return base === 'front-centre' ? 'upper' : 'lower';
  return base === 'upper' || base === 'lower' || base === 'back' ? base : 'paper';
}

/** Three short strips across a taped line, square to it. */
function tapesOf(part: Part): string[] {
  return part.lines
    .filter((inner) => inner.kind === 'taped')
    .flatMap(({ chain }) => {
      const from = chain[0]!.a;
      const to = chain.at(-1)!.d;
      const length = distance(from, to);
      return length < 20 ? [] : [0.2, 0.55, 0.88].map((k) => across(chain, k * length, 11));
    });
}

/** A small arrow head at `tip`, pointing away from `from`. */
function head(from: Point, tip: Point, size = 9): string {
  const d = distance(from, tip) || 1;
  const [ux, uy] = [((tip.x - from.x) / d) * size, ((tip.y - from.y) / d) * size];
  const [l, r] = [
    { x: tip.x - ux - uy * 0.45, y: tip.y - uy + ux * 0.45 },
    { x: tip.x - ux + uy * 0.45, y: tip.y - uy - ux * 0.45 },
  ];
  return `${segmentPath(l, tip)}${segmentPath(tip, r)}`;
}

/** What is drawn of a piece. */
export const pieceModel = once((piece: Piece): PieceModel => {
  const cut = cutOf(piece);
  const seam = piece.seam;
  const grain = piece.grainline;
  const strokes: Drawn[] = [
    ...(seam ?? []).map((edge) => ({
      key: `seam ${edge.id}`,
      stroke: cut ? ('seam' as const) : edgeStyle(edge),
      d: pathOf(edge.chain),
    })),
    ...notchStrokes(piece, cut).map((chain, i) => ({
      key: `mark ${i}`,
      stroke: 'notch' as const,
      d: pathOf(chain),
    })),
    ...piece.notches.flatMap((notch): Drawn[] => {
      const edge = notch.ghost
        ? (seam ?? piece.parts.flatMap((part) => part.edges)).find((one) => one.id === notch.edge)
        : undefined;
      return edge
        ? [{ key: `ghost ${notch.id}`, stroke: 'ghost-notch', d: across(edge.chain, notch.at) }]
        : [];
    }),
    ...(piece.treatments.length > 0 ? (late.eased?.(piece) ?? []) : []),
    ...(piece.fullness ? (late.fulled?.(piece) ?? []) : []),
    ...(cut ? [{ key: 'cut', stroke: 'cut' as const, d: closedPath([cut.cut]) }] : []),
    ...(grain
      ? [
          {
            key: 'grain',
            stroke: 'grain' as const,
            d: segmentPath(grain.from, grain.to) + head(grain.to, grain.from) + head(grain.from, grain.to),
          },
        ]
      : []),
  ];
  return {
    id: piece.id,
    cloth: clothOf(piece),
    allowance: cut && closedPath([cut.cut]),
    sheet: seam && closedPath([chainOf(seam)]),
    parts: piece.parts.map((part) => (piece.fullness && late.through?.(piece, part)) || partModel(part)),
    strokes,
    tapes: piece.parts.flatMap(tapesOf),
  };
});
