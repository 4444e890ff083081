import { distance } from '../geometry/point.ts';
import { applyTo, invert } from '../geometry/isometry.ts';
import type { Point } from '../geometry/types.ts';
import { transformChain } from '../geometry/chain.ts';
import { nearestOnChain } from '../geometry/nearest.ts';
import { endAt, findEdge, partOf } from '../pattern/outline.ts';
import { findSlash } from '../pattern/slash-line.ts';
import type { Part, Piece } from '../pattern/types.ts';
import { resolveAnchor } from './anchors.ts';
import { withDrawn } from './lines.ts';
import { frontOf, refused } from './pieces.ts';
import type { Anchor, DrawnLine, Refusal, Work } from './types.ts';

/**
 * The front while darts can be moved on it: on the table, on paper that overlays can be laid on, and nothing finished yet. Else the
 * refusal 'already-separated', 'not-opened' or 'already-finished'.
 */
export function paperFront(work: Work): { readonly front: Piece } | { readonly refused: Refusal } {
  const front = frontOf(work);
  if (front === undefined) return refused('already-separated');
  if (work.opened === undefined) return refused('not-opened');
  return front.seam === undefined ? { front } : refused('already-finished');
}

/**
 * The front while darts can be drawn on it: as `paperFront`, and not cut along a style line, of which later lines would have to take
 * account ('already-cut').
 */
export function drawnFront(work: Work): { readonly front: Piece } | { readonly refused: Refusal } {
  if (frontOf(work) === undefined) return refused('already-cut');
  const paper = paperFront(work);
  if ('refused' in paper) return paper;
  const styled = paper.front.parts.some((p) =>
    p.edges.some((e) => e.role === 'style-line' || e.role === 'connector'),
  );
  return styled ? refused('already-cut') : paper;
}

/** Where an anchor is for that sheet: a landmark that several sheets share is meant where this one has it. */
export function resolveOn(work: Work, anchor: Anchor, sheet: Part | undefined): Point | undefined {
  const own = sheet && 'landmark' in anchor && Object.hasOwn(sheet.landmarks, anchor.landmark);
  if (!own) return resolveAnchor(work, anchor, 'front');
  const at = sheet.landmarks[anchor.landmark]!;
  return { x: at.x + (anchor.dx ?? 0), y: at.y + (anchor.dy ?? 0) };
}

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
