import { nearestOnChain } from '../geometry/nearest.ts';
import { addConnector, connectorId, dartTip } from '../pattern/connector.ts';
import type { Outcome } from '../pattern/outcome.ts';
import { findLine } from '../pattern/style-line.ts';
import type { Piece } from '../pattern/types.ts';
import type { Open } from '../pattern/with.ts';
import { withEntry } from '../pattern/with-entry.ts';
import { lineLength, withLineList } from './lines.ts';
import { frontOf, refused, withPieces } from './pieces.ts';
import type { DrawnLine, Work } from './types.ts';

/** The line's record with other connectors; the type sees to it that no field is left out. */
const withFeet = (l: DrawnLine, feet: DrawnLine['feet']): Open<DrawnLine> => ({
  id: l.id,
  kind: l.kind,
  chain: l.chain,
  points: l.points,
  kinks: l.kinks,
  ends: l.ends,
  feet,
});

/** A line's connectors without that of one dart. */
function feetBut(feet: DrawnLine['feet'], dart: string): DrawnLine['feet'] {
  if (!Object.hasOwn(feet, dart)) return feet;
  const { [dart]: _, ...others } = feet;
  return others;
}

/** Work without any line's record of this dart's connector. */
export function withoutFoot(work: Work, dart: string): Work {
  return withLineList(
    work,
    work.lines.map((line) => withFeet(line, feetBut(line.feet, dart))),
  );
}

/**
 * Draws the connector from a dart's tip to a line at a fraction of its length, in place of an earlier one of that dart. `square`: to the
 * place of the line nearest to the tip instead. Refusals: `no-such-line`, and those of `addConnector`.
 */
export function connectAt(
  work: Work,
  dart: string,
  line: string,
  fraction: number,
  square = false,
): Outcome<Work> {
  const front = frontOf(work)!;
  const drawn = work.lines.find((l) => l.id === line);
  const length = lineLength(front, line);
  if (drawn === undefined || length === undefined) return refused('no-such-line', { line });
  const from = square ? dartTip(front, dart) : undefined;
  const at = from ? nearestOnChain(drawn.chain, from).length : fraction * length;
  const next = addConnector(front, dart, line, at);
  if ('refused' in next) return next;
  const { a: tip, d: foot } = findLine(next.ok, connectorId(dart))!.line.chain[0]!;
  const lines = work.lines.map((l) => {
    const feet = feetBut(l.feet, dart);
    return withFeet(
      l,
      l === drawn ? withEntry(feet, dart, { at, foot, tip, ...(square && { square }) }) : feet,
    );
  });
  return { ok: withLineList(withPieces(work, 'front', next.ok), lines) };
}

/** The work with a dart's connector drawn from its new tip, or without it where that cannot be done; `was`: the front before. */
export function connectedAgain(work: Work, was: Piece, dart: string, line: DrawnLine): Work {
  const { at, square } = line.feet[dart]!;
  const again = connectAt(work, dart, line.id, at / lineLength(was, line.id)!, square);
  return 'ok' in again ? again.ok : withoutFoot(work, dart);
}
