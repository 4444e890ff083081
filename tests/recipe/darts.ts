import fc from 'fast-check';
import { chainEnd, chainLength, chainStart } from '../../src/lib/geometry/chain.ts';
import { distance } from '../../src/lib/geometry/point.ts';
import type { Point } from '../../src/lib/geometry/types.ts';
import { findEdge, landmark, outlineOf } from '../../src/lib/pattern/outline.ts';
import type { Edge, Piece } from '../../src/lib/pattern/types.ts';
import type { BlockForm, Measures } from '../../src/lib/pattern/block.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import '../../src/lib/recipe/commands/index.ts';
import { frontOf } from '../../src/lib/recipe/pieces.ts';
import type { Anchor, BlockChoice, Command, Work } from '../../src/lib/recipe/types.ts';
import { anyMeasures } from '../pattern/bodice.ts';
import { real } from '../support/real.ts';

/** A block, the dart that is moved, and the place on its outline where it goes. */
export interface Move {
  readonly block: BlockChoice;
  readonly form: BlockForm;
  readonly dart: string;
  /** The form's other dart reaches the bust point as well. */
  readonly both: boolean;
  readonly edge: string;
  /** Fraction of the edge. */
  readonly at: number;
}

export const B = (dx?: number, dy?: number): Anchor => ({
  landmark: 'right/bust-point',
  ...(dx !== undefined && { dx, dy: dy ?? 0 }),
});

export const DARTS: Readonly<Record<BlockForm, readonly string[]>> = {
  side: ['right'],
  'two-dart': ['right', 'right/waist-dart'],
  waist: ['right/waist-dart'],
};
/** The edges on which a slash may begin, in the order of the outline from centre front. */
export const EDGES: Readonly<Record<BlockForm, readonly string[]>> = {
  side: ['waist', 'side-lower', 'side-upper'],
  'two-dart': ['waist-inner', 'waist-outer', 'side-lower', 'side-upper'],
  waist: ['waist-inner', 'waist-outer', 'side'],
};
const UPPER = ['armhole', 'shoulder', 'neckline'];

export const edgesOf = (form: BlockForm): readonly string[] => [
  'centre-front',
  ...[...EDGES[form], ...UPPER].map((id) => `right/${id}`),
];

const moveOf = (
  measures: Measures,
  form: BlockForm,
  which: number,
  both: boolean,
  where: number,
  at: number,
) => {
  const edges = edgesOf(form);
  const darts = DARTS[form];
  return {
    block: { measures, form },
    form,
    dart: darts[which % darts.length]!,
    both,
    edge: edges[where % edges.length]!,
    at,
  };
};

/** Evenly over bodies, forms, darts, edges and places on them. */
export const anyMove: fc.Arbitrary<Move> = fc
  .tuple(
    anyMeasures,
    fc.constantFrom<BlockForm>('side', 'two-dart', 'waist'),
    fc.nat({ max: 1 }),
    fc.boolean(),
    fc.nat({ max: 839 }),
    real(0.06, 0.94),
  )
  .map((all) => moveOf(...all));

/** The work after commands that must all be followed. */
export function done(work: Work, ...commands: readonly Command[]): Work {
  let now = work;
  for (const command of commands) {
    const next = apply(now, command);
    if ('refused' in next)
      throw new Error(`${JSON.stringify(command)} refused: ${JSON.stringify(next.refused)}`);
    now = next.work;
  }
  return now;
}

/** The code with which a command is refused, or undefined. */
export function refusal(work: Work, command: Command): string | undefined {
  const next = apply(work, command);
  return 'refused' in next ? next.refused.code : undefined;
}

export const front = (work: Work): Piece => frontOf(work)!;

/** The working darts of a move. */
export const extended = ({ form, dart, both }: Move): Command[] =>
  DARTS[form].filter((d) => both || d === dart).map((d) => ({ do: 'extend-dart', dart: d, to: B() }));

export const slashed = (slash: string, from: Anchor, via?: Anchor): Command[] => [
  { do: 'draw-slash', slash, from, ...(via && { via }), to: B() },
  { do: 'cut-slash', slash, past: 0 },
];

export const on = (edge: string, at: number): Anchor => ({ on: edge, at });

/** Largest distance (mm) of the control points of two outlines, wherever they start; Infinity when their edges are not the same ones. */
export function outlinesApart(a: Piece, b: Piece): number {
  const ours = outlineOf(a);
  const theirs = outlineOf(b);
  if (ours.length !== theirs.length) return Infinity;
  const start = theirs.findIndex((e) => e.id === ours[0]!.id);
  let max = 0;
  for (let i = 0; i < ours.length; i++) {
    const e = ours[i]!;
    const f = theirs[(start + i) % theirs.length]!;
    if (e.id !== f.id || e.chain.length !== f.chain.length) return Infinity;
    for (const [k, s] of e.chain.entries()) {
      const u = f.chain[k]!;
      const pairs: [Point, Point][] = [
        [s.a, u.a],
        [s.d, u.d],
      ];
      if (s.kind === 'cubic' && u.kind === 'cubic') pairs.push([s.b, u.b], [s.c, u.c]);
      for (const [p, q] of pairs) max = Math.max(max, distance(p, q));
    }
  }
  return max;
}

/** How far open a dart is at the edge, and how far that is from the bust point on either leg. All mm, from the edges themselves. */
export function openingOf(
  piece: Piece,
  dart: string,
): { readonly width: number; readonly legs: [number, number] } {
  const [upper, lower] = legEnds(piece, dart);
  const bust = landmark(piece, piece.darts.find((d) => d.id === dart)!.bustPoint)!;
  return { width: distance(upper, lower), legs: [distance(upper, bust), distance(lower, bust)] };
}

function legEnds(piece: Piece, dart: string): [Point, Point] {
  const { upper, lower, bustPoint } = piece.darts.find((d) => d.id === dart)!;
  const bust = landmark(piece, bustPoint)!;
  const far = (id: string): Point => {
    const { chain } = findEdge(piece, id)!;
    const [p, q] = [chainStart(chain), chainEnd(chain)];
    return distance(p, bust) > distance(q, bust) ? p : q;
  };
  return [far(upper), far(lower)];
}

/** Largest difference of any edge's length from that of the stretch it came from, mm. */
export function stretched(edges: readonly Edge[]): number {
  return Math.max(...edges.map((e) => Math.abs(chainLength(e.chain) - (e.origin.to - e.origin.from))));
}
