import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import BufferParameters from 'jsts/org/locationtech/jts/operation/buffer/BufferParameters.js';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import type { Chain, Point } from '../../src/lib/geometry/types.ts';
import { offsetOutline, type CornerForm, type OffsetEdge } from '../../src/lib/geometry/offset.ts';
import { polyline } from '../../src/lib/geometry/polyline.ts';
import { cubic, line } from '../../src/lib/geometry/segment.ts';
import { interleaved, type BenchOptions, type BenchRow } from './harness.ts';

const p = (x: number, y: number): Point => ({ x, y });

/** Twelve edges, seven lines and five cubics, 250 × 450 mm, with a notch 30 wide and 150 deep; clockwise on the screen. */
export const piece: Chain = [
  cubic(p(0, 60), p(30, 62), p(62, 44), p(75, 0)),
  line(p(75, 0), p(184, 30)),
  cubic(p(184, 30), p(176, 70), p(172, 112), p(180, 150)),
  cubic(p(180, 150), p(190, 195), p(225, 210), p(250, 215)),
  cubic(p(250, 215), p(249, 250), p(246, 290), p(240, 330)),
  line(p(240, 330), p(225, 450)),
  cubic(p(225, 450), p(190, 454), p(150, 452), p(135, 450)),
  line(p(135, 450), p(120, 300)),
  line(p(120, 300), p(105, 450)),
  line(p(105, 450), p(50, 450)),
  line(p(50, 450), p(0, 450)),
  line(p(0, 450), p(0, 60)),
];

/** A piece with one hollow edge of 12 mm radius and less, under an allowance of 15 mm. */
export const hollow: Chain = [
  line(p(0, 0), p(80, 0)),
  cubic(p(80, 0), p(88, 80), p(112, 80), p(120, 0)),
  line(p(120, 0), p(200, 0)),
  line(p(200, 0), p(200, 200)),
  line(p(200, 200), p(0, 200)),
  line(p(0, 200), p(0, 0)),
];

const FLATTENING = 0.05;

/** jsts's buffer, mitred, of the flattened outline, which it gets ready made. */
function jstsBuffer(outline: Chain): (width: number) => number {
  const factory = new GeometryFactory();
  const points = polyline(outline, FLATTENING);
  const polygon = factory.createPolygon(points.map(({ x, y }) => new Coordinate(x, y)));
  return (width) => {
    const how = new BufferParameters(8, BufferParameters.CAP_ROUND, BufferParameters.JOIN_MITRE, 5);
    return BufferOp.bufferOp(polygon, width, how).getNumPoints();
  };
}

/** The rows of the table of ratios for the allowance, and the time of a piece with unequal widths and reflected corners. */
export async function allowanceBench(options: BenchOptions = {}): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  const against = 'jsts buffer, mitre, flattened at 0.05 mm';
  const row = (name: string, outline: Chain, width: number, goal: number): void => {
    const edges: OffsetEdge[] = outline.map((s) => ({ chain: [s], width }));
    const wider: OffsetEdge[] = outline.map((s) => ({ chain: [s], width: width + 0.25 }));
    const theirs = jstsBuffer(outline);
    const timing = interleaved(
      (i) => offsetOutline(i % 2 === 0 ? edges : wider, []).cut.length,
      (i) => theirs(i % 2 === 0 ? width : width + 0.25),
      { iterations: 400, ...options },
    );
    rows.push({ name, against, goal, ...timing });
  };
  row('allowance of a 12-edge piece', piece, 10, 1 / 3);
  row('allowance of a tight hollow', hollow, 15, 1 / 6);

  const widths = [6, 10, 10, 6, 12.7, 40, 40, 10, 10, 40, 40, 0];
  const edges: OffsetEdge[] = piece.map((s, i) => ({ chain: [s], width: widths[i]! }));
  const corners: CornerForm[] = piece.map((_, i) =>
    i % 3 === 1 ? { kind: 'reflect', first: 'before' } : { kind: 'mitre' },
  );
  const theirs = jstsBuffer(piece);
  rows.push({
    name: 'allowance, unequal widths, reflected corners (no goal set)',
    against: 'jsts buffer of one width (it has no unequal ones)',
    goal: 1,
    ...interleaved(
      () => offsetOutline(edges, corners).cut.length,
      () => theirs(10),
      { iterations: 400, ...options },
    ),
  });
  return rows;
}
