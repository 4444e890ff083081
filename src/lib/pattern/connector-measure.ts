import { tangentAtLength } from '../geometry/chain.ts';
import { distance, sub } from '../geometry/point.ts';
import { angleBetween, PI } from '../geometry/trig.ts';
import type { Point } from '../geometry/types.ts';
import type { Piece } from './types.ts';

/** A connector as it is drawn: its two ends, the direction of the line at the foot, its length (mm) and its angle to the line (rad, 0 to π/2). */
export interface ConnectorMeasure {
  readonly tip: Point;
  readonly foot: Point;
  /** Of length 1, towards the line's end. */
  readonly along: Point;
  readonly length: number;
  readonly angle: number;
}

/** What a ruler and a protractor find of a dart's connector; undefined where none is drawn, or it is cut already. */
export function measuredConnector(piece: Piece, dart: string): ConnectorMeasure | undefined {
  for (const { lines } of piece.parts) {
    const connector = lines.find((line) => line.kind === 'connector' && line.dart === dart);
    const style = lines.find(({ id, kind, origin }) => {
      const at = connector?.foot ?? NaN;
      return kind === 'style-line' && id === connector?.line && at >= origin.from && at <= origin.to;
    });
    if (connector?.foot === undefined || style === undefined) continue;
    const { a: tip, d: foot } = connector.chain[0]!;
    const along = tangentAtLength(style.chain, connector.foot - style.origin.from);
    const angle = Math.abs(angleBetween(along, sub(tip, foot)));
    return { tip, foot, along, length: distance(tip, foot), angle: Math.min(angle, PI - angle) };
  }
  return undefined;
}

/** The darts of a piece whose connector is drawn and not cut. */
export const connectorsOf = (piece: Piece): readonly string[] =>
  piece.parts.flatMap(({ lines }) =>
    lines.flatMap(({ kind, dart }) => (kind === 'connector' && dart !== undefined ? [dart] : [])),
  );
