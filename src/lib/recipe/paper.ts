import type { Point } from '../geometry/types.ts';
import type { Part, Piece } from '../pattern/types.ts';
import { resolveAnchor } from './anchors.ts';
import { frontOf, refused } from './pieces.ts';
import type { Anchor, Refusal, Work } from './types.ts';

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
