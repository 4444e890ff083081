import { distance } from '../geometry/point.ts';
import { applyTo, invert } from '../geometry/isometry.ts';
import { transformChain } from '../geometry/chain-moved.ts';
import { nearestOnChain } from '../geometry/nearest.ts';
import { endAt, findEdge, partOf } from '../pattern/outline.ts';
import { findSlash } from '../pattern/slash-line.ts';
import type { Part, Piece } from '../pattern/types.ts';
import { withDrawn } from './lines.ts';
import type { DrawnLine, Work } from './types.ts';

/** Whether a line that is no slash is called so, cut or not. */
export const lineNamed = (work: Work, id: string): boolean =>
  work.lines.some((line) => line.id === id && line.kind !== 'slash');

/**
 * A slash line as it lies on the paper before anything was turned: carried back from where its sheet lies now. `edge`: the edge
 * that its start was given on, if it was.
 */
export function slashRecord(front: Piece, id: string, edge: string | undefined): DrawnLine {
  const { part, line } = findSlash(front, id)!;
  const chain = isStill(part) ? line.chain : transformChain(line.chain, invert(part.motion));
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
    kinks: undefined,
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
