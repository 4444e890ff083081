import { chainLength } from '../geometry/chain.ts';
import { outlineOf } from '../pattern/outline.ts';
import type { Piece } from '../pattern/types.ts';
import { nameOf } from '../strings/names.ts';
import { formatAngle, formatLength, type Units } from '../strings/units.ts';

export interface Measure {
  readonly id: string;
  readonly label: string;
  readonly value: string;
}

/** What a piece measures, in words: its edges in outline order, its darts, its notches, its allowances. Full size. */
export function measuresOf(piece: Piece, units: Units): readonly Measure[] {
  const edges = outlineOf(piece).map((edge) => ({
    id: edge.id,
    label: nameOf(edge.id),
    value:
      formatLength(chainLength(edge.chain), units) +
      (edge.partner ? `, sewn to ${nameOf(edge.partner)}` : ''),
  }));
  const lines = piece.parts.flatMap((part) =>
    part.lines.map((line) => ({
      id: `${part.id}:${line.id}`,
      label: nameOf(line.id),
      value: formatLength(chainLength(line.chain), units),
    })),
  );
  const darts = piece.darts.map((dart) => ({
    id: `dart:${dart.id}`,
    label: `${dart.side} dart`,
    value:
      dart.state === 'closed' && Math.abs(dart.residual) < 1e-9
        ? 'closed, its legs meet'
        : `${dart.state}, ${formatAngle(dart.residual)} open`,
  }));
  const notches = piece.notches.map((notch) => ({
    id: `notch:${notch.id}:${notch.ghost === true}`,
    label: `notch ${notch.id}${notch.ghost ? ' (old place)' : ''}`,
    value: `${formatLength(notch.at, units)} along ${nameOf(notch.edge)}`,
  }));
  const widths = Object.entries(piece.allowances).map(([group, width]) => ({
    id: `width:${group}`,
    label: `allowance at ${nameOf(group)}`,
    value: formatLength(width, units),
  }));
  return [...edges, ...lines, ...darts, ...notches, ...widths];
}
