import { distance } from '../geometry/point.ts';
import { applyTo, invert } from '../geometry/isometry.ts';
import { transformChain } from '../geometry/chain.ts';
import { nearestOnChain } from '../geometry/nearest.ts';
import { endAt, findEdge, partOf } from '../pattern/outline.ts';
import { findSlash } from '../pattern/slash-line.ts';
import type { Part, Piece } from '../pattern/types.ts';
import { withDrawn } from './lines.ts';
import { frontOf, refused } from './pieces.ts';
import type { DrawnLine, Refusal, Work } from './types.ts';

/** The front while darts can be moved on it: on the table, and on paper that overlays can be laid on. */
export function paperFront(work: Work): { readonly front: Piece } | { readonly refused: Refusal } {
  const front = frontOf(work);
  if (front === undefined) return refused('already-separated');
  return work.opened === undefined ? refused('not-opened') : { front };
}

/**
 * A slash line as it lies on the paper before anything was turned: carried back from where its sheet lies now. `edge`: the edge
 * that its start was given on, if it was.
 */
export function slashRecord(front: Piece, id: string, edge: string | undefined): DrawnLine {
  const { part, line } = findSlash(front, id)!;
  const chain =
    part.grain === 'kept' && isStill(part) ? line.chain : transformChain(line.chain, invert(part.motion));
  const start = line.chain[0]!.a;
  const on =
    edge !== undefined && part.edges.some((e) => e.id === edge)
      ? edge
      : part.edges.find((e) => nearestOnChain(e.chain, start).distance <= ON_EDGE)?.id;
  return {
    id,
    kind: 'slash',
    chain,
    points: [chain[0]!.a, ...chain.map((s) => s.d)],
    ends: [on, undefined],
    feet: {},
  };
}

/** As `drawSlash` has it, mm. */
const ON_EDGE = 1e-4;

const isStill = ({ motion: m }: Part): boolean => m.a === 1 && m.b === 0 && m.e === 0 && m.f === 0;

/** The work with the line's record ending where the cut ended: a line that all but met the tip was put onto it. */
export function putOnTip(work: Work, front: Piece, id: string): Work {
  const drawn = work.lines.find((l) => l.id === id);
  const bank = findEdge(front, `${id}/b`);
  const part = bank && partOf(front, bank.id);
  if (drawn === undefined || bank === undefined || part === undefined) return work;
  const tip = bank.chain[bank.chain.length - 1]!.d;
  const end = isStill(part) ? tip : applyTo(invert(part.motion), tip);
  const was = drawn.chain[drawn.chain.length - 1]!.d;
  if (distance(end, was) <= ROUNDING) return work;
  const chain = endAt(drawn.chain, end);
  return withDrawn(work, { ...drawn, chain, points: [...drawn.points.slice(0, -1), end] });
}

/** What carrying back and forth may do, mm. */
const ROUNDING = 1e-9;
