import { chainLength } from '../geometry/chain.ts';
import type { Chain } from '../geometry/types.ts';
import { cutLine } from '../pattern/allowance.ts';
import { outlineOf } from '../pattern/outline.ts';
import type { Edge, InnerLine, Piece } from '../pattern/types.ts';
import './commands/index.ts';
import { replay } from './replay.ts';
import type { DrawnLine, Recipe } from './types.ts';

/**
 * What a recipe makes, as plain data for other programs: every piece with its named edges, partners, landmarks, darts,
 * notches and cut line. Millimetres at full size, radians; x to the viewer's right, y down, outlines clockwise on the
 * screen. Numbers are not rounded, and keys stand in one order, so the same recipe gives the same bytes everywhere. Throws
 * RangeError for a block that does not exist (`parseRecipe` lets none through).
 */
export function replayDocument(recipe: Recipe): object {
  const { work, unfollowed } = replay(recipe);
  return {
    format: 'pin-and-pivot/replay',
    version: 1,
    units: { length: 'mm', angle: 'rad', scale: 'full size', y: 'down' },
    block: { chosen: recipe.block, measures: work.block.measures, facts: work.block.facts },
    fabric: recipe.fabric,
    pieces: work.pieces.map(pieceDocument),
    lines: work.lines.map(lineDocument),
    turns: work.turns,
    identified: work.identified,
    readings: work.readings,
    walked: work.walked,
    overlaid: work.overlaid,
    placed: work.placed,
    unfollowed: unfollowed.map(({ index, command, refused }) => ({ index, do: command.do, refused })),
  };
}

function pieceDocument(piece: Piece): object {
  const cut = cutLine(piece);
  return {
    id: piece.id,
    outline: outlineOf(piece).map(edgeDocument),
    parts: piece.parts.map((part) => ({
      id: part.id,
      grain: part.grain,
      motion: part.motion,
      edges: part.edges.map(edgeDocument),
      lines: part.lines.map(innerDocument),
      landmarks: part.landmarks,
    })),
    hinges: piece.hinges,
    darts: piece.darts,
    notches: piece.notches,
    treatments: piece.treatments,
    finished: piece.finished,
    fullness: piece.fullness,
    smoothed: piece.smoothed,
    allowances: piece.allowances,
    corners: piece.corners,
    notchesCarried: piece.notchesCarried,
    label: piece.label,
    grainline: piece.grainline,
    cutLine: cut && {
      segments: segments(cut.cut),
      groups: Object.fromEntries(Object.entries(cut.groups).map(([id, chain]) => [id, segments(chain)])),
      notches: cut.notches,
      notes: cut.notes,
    },
  };
}

function edgeDocument(edge: Edge): object {
  const { id, role, side, partner, dart, origin, chain } = edge;
  return { id, role, side, partner, dart, origin, length: chainLength(chain), segments: segments(chain) };
}

function innerDocument(line: InnerLine): object {
  const { id, kind, dart, origin, chain, notches } = line;
  return { id, kind, dart, origin, length: chainLength(chain), notches, segments: segments(chain) };
}

function lineDocument(line: DrawnLine): object {
  const { id, kind, chain, ends, feet, points, kinks } = line;
  return { id, kind, length: chainLength(chain), ends, feet, points, kinks, segments: segments(chain) };
}

/** A line as [x, y, x, y]; a cubic as its four points in a row. */
function segments(chain: Chain): object[] {
  return chain.map((s) =>
    s.kind === 'line'
      ? { line: [s.a.x, s.a.y, s.d.x, s.d.y] }
      : { cubic: [s.a.x, s.a.y, s.b.x, s.b.y, s.c.x, s.c.y, s.d.x, s.d.y] },
  );
}
