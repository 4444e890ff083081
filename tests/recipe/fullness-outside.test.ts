import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  along,
  away,
  curves,
  endWay,
  first,
  last,
  lengthOf,
  on,
  paper,
  paperRound,
  Replayer,
  startWay,
  xy,
  type Document,
  type Edge,
  type Piece,
  type XY,
} from './outside-measure.ts';

/*
 * An outside program once more (see outside.test.ts): it writes recipes, runs the command and measures the JSON with arithmetic of its own.
 * Nothing of the project is imported. Expectations are derived: what is gathered, eased, tucked or sewn apart keeps the angle round the
 * bust point and the sewn length of each seam (trade notes, dart theory: the angle deficit, read; close and overlay, read).
 */

const FIGURES = ['F1', 'F2', 'F3', 'F4', 'F5'] as const;
const WAIST = 'right/waist-dart';
const bust = (dx?: number, dy?: number) => ({
  landmark: 'right/bust-point',
  ...(dx !== undefined && { dx, dy: dy ?? 0 }),
});
const draw = (id: string, edge: string, at: number, via?: object) => ({
  do: 'draw-slash',
  slash: id,
  from: { on: edge, at },
  ...(via && { via }),
  to: bust(),
});
const cut = (id: string) => ({ do: 'cut-slash', slash: id, past: 0 });
const slash = (id: string, edge: string, at: number) => [draw(id, edge, at), cut(id)];
const turn = (into: string, share: number) => ({
  do: 'turn',
  dart: WAIST,
  into,
  part: 'freed',
  about: bust(),
  by: { share },
});
const WORKING = [{ do: 'extend-dart', dart: WAIST, to: bust() }];

// A third of the dart each at the waist, the shoulder and the side; then gathers, ease and tucks.
const SHARED: readonly object[] = [
  ...WORKING,
  ...slash('up', 'right/shoulder', 0.45),
  ...slash('low', 'right/side', 0.55),
  turn('up', 1 / 3),
  turn('low', 1 / 2),
];
const REACH = { before: 24, after: 31 };
const TUCKS = 3;
const FULL = [
  ...SHARED,
  { do: 'fullness', dart: WAIST, as: 'gathers', ...REACH },
  { do: 'fullness', dart: 'up', as: 'ease', ...REACH },
  { do: 'fullness', dart: 'low', as: 'tucks', ...REACH, tucks: TUCKS },
];
const HALVED = (edge: string, at: number) => [...WORKING, ...slash('up', edge, at), turn('up', 1 / 2)];
const PARTED = { do: 'part-at-darts', darts: ['up', WAIST] };
const SMOOTH = 35;
const SMOOTHED = ['front-centre', 'front-side'].map((piece) => ({
  do: 'smooth-seam',
  piece,
  at: 'right/bust-point',
  reach: SMOOTH,
}));
// Three darts from the side, parallel: their slashes run over alternate pivots on a circle of an inch round the bust point.
const CIRCLE = 25.4;
const STEP = CIRCLE / 2;
const THREE = ['p1', 'p2', 'p3'];
const PARALLEL = (side: number) => [
  ...WORKING,
  // The side is walked from the waist up: the first slash is the lowest.
  ...[1, 0, -1].map((k, i) =>
    draw(
      THREE[i]!,
      'right/side',
      0.5 - (k * STEP) / side,
      bust(-Math.sqrt(CIRCLE * CIRCLE - k * k * STEP * STEP), k * STEP),
    ),
  ),
  ...THREE.map(cut),
  turn('p1', 1 / 3),
  turn('p2', 1 / 2),
  turn('p3', 1),
];
const BACKED = THREE.map((dart) => ({ do: 'back-off', dart, by: 12.7 }));
const CAPPED = THREE.flatMap((dart) => [
  { do: 'true-legs', dart },
  { do: 'cap', dart, fold: 'down' },
]);

interface Made {
  readonly bare: Document;
  readonly full: Document;
  readonly shoulder: Document;
  readonly armhole: Document;
  readonly smoothed: Document;
  readonly backed: Document;
  readonly capped: Document;
}
const made = new Map<string, Made>();
let replayer: Replayer;
beforeAll(async () => {
  replayer = new Replayer();
  for (const figure of FIGURES) {
    const replay = (commands: readonly object[]) => replayer.replay({ figure, form: 'waist' }, commands);
    const [bare, full, shoulder, armhole, smoothed] = await Promise.all([
      replay(WORKING),
      replay(FULL),
      replay([...HALVED('right/shoulder', 0.5), PARTED]),
      replay([...HALVED('right/armhole', 0.6), PARTED]),
      replay([...HALVED('right/shoulder', 0.5), PARTED, ...SMOOTHED]),
    ]);
    const side = lengthOf(bare.pieces[0]!.outline.find((e) => e.id === 'right/side')!);
    const [backed, capped] = await Promise.all([
      replay([...PARALLEL(side), ...BACKED]),
      replay([...PARALLEL(side), ...BACKED, ...CAPPED]),
    ]);
    made.set(figure, { bare, full, shoulder, armhole, smoothed, backed, capped });
  }
}, 300_000);
afterAll(() => replayer.clear());

const each = (check: (m: Made, figure: string) => void) => {
  for (const [figure, m] of made) check(m, figure);
};
const fronts = (d: Document): readonly Piece[] => d.pieces.filter((p) => p.id.startsWith('front'));
const outlines = (d: Document): readonly Edge[] => fronts(d).flatMap((p) => p.outline);
/** Sewn length of all edges of a role: what is cut less the fullness. */
function sewn(d: Document, role: string): number {
  let sum = 0;
  for (const piece of fronts(d))
    for (const e of piece.outline)
      if (e.role === role) sum += lengthOf(e) - (piece.fullness?.find((f) => f.edge === e.id)?.fullness ?? 0);
  return sum;
}
const ROLES = ['centre-front', 'waist', 'side', 'armhole', 'shoulder', 'neckline'];
const dartAngle = (d: Document) => d.block.facts.dartAngle;

describe('an outside program that reads only what replay prints of fullness and princess seams', () => {
  it('can write recipes that are followed to their end', () => {
    each((m) => {
      for (const document of Object.values(m) as Document[]) expect(document.unfollowed).toEqual([]);
    });
  });

  it('finds round the bust point a full turn less the dart’s angle, whatever became of the dart', () => {
    each((m) => {
      for (const document of Object.values(m) as Document[]) {
        const round = paperRound(document, 'right/bust-point');
        expect(Math.abs(round - (2 * Math.PI - dartAngle(document)))).toBeLessThan(1e-9);
        expect(Math.abs(paper(document) / paper(m.bare) - 1)).toBeLessThan(1e-9);
      }
    });
  });

  it('finds each seam’s sewn length as it was: the cut length less the fullness', () => {
    each((m) => {
      for (const document of [m.full, m.shoulder, m.armhole, m.backed])
        for (const role of ROLES)
          expect(Math.abs(sewn(document, role) - sewn(m.bare, role)), role).toBeLessThan(1e-9);
    });
  });

  it('finds the gathered side as long as its partner on the back, less its fullness', () => {
    each(({ full }) => {
      const back = full.pieces.find((p) => p.id === 'back')!.outline.filter((e) => e.role === 'side');
      const length = back.reduce((sum, e) => sum + lengthOf(e), 0);
      expect(Math.abs(sewn(full, 'side') - length)).toBeLessThan(1e-9);
    });
  });

  it('finds the cut edge smooth at both ends, and as much fullness as the cut edges say', () => {
    each(({ full }) => {
      const { outline, fullness, notches } = fronts(full)[0]!;
      expect(fullness!.map((f) => f.as)).toEqual(['gathers', 'ease', 'tucks']);
      for (const f of fullness!) {
        const i = outline.findIndex((e) => e.id === f.edge);
        const edge = outline[i]!;
        const [before, after] = [outline.at(i - 1)!, outline[(i + 1) % outline.length]!];
        for (const [u, v] of [
          [endWay(before), startWay(edge)],
          [endWay(edge), startWay(after)],
        ] as const) {
          expect(Math.abs(u[0] * v[1] - u[1] * v[0])).toBeLessThan(1e-9);
          expect(u[0] * v[0] + u[1] * v[1]).toBeGreaterThan(0.999999);
        }
        expect(f).toMatchObject(REACH);
        expect(Math.abs(lengthOf(edge) - (f.before + f.after) - f.fullness)).toBeLessThan(1e-9);
        expect(f.fullness).toBeGreaterThan(1);
        const ends = notches.filter((n) => n.edge === f.edge);
        expect(ends.map((n) => n.id)).toEqual([`${f.dart}-gather-1`, `${f.dart}-gather-2`]);
        expect(ends[0]!.at).toBe(0);
        expect(Math.abs(ends[1]!.at - lengthOf(edge))).toBeLessThan(1e-9);
      }
    });
  });

  it('finds tucks that use up the width at the edge, in parallel pairs', () => {
    each(({ full }) => {
      const piece = fronts(full)[0]!;
      const f = piece.fullness!.find((one) => one.as === 'tucks')!;
      const edge = piece.outline.find((e) => e.id === f.edge)!;
      const folds = piece.parts.flatMap((p) => p.lines.filter((l) => l.id.startsWith('tuck-low-')));
      expect(folds.map((l) => [l.id, l.kind])).toEqual(
        [1, 2, 3].flatMap((n) => [1, 2].map((k) => [`tuck-low-${n}-${k}`, 'fold'])),
      );
      const ways = folds.map((l) => startWay(l as unknown as Edge));
      for (const w of ways) expect(Math.abs(w[0] * ways[0]![1] - w[1] * ways[0]![0])).toBeLessThan(1e-12);
      const at = folds.map((l) => along(edge, first(l as unknown as Edge)));
      for (const { off } of at) expect(off).toBeLessThan(1e-6);
      const widths = [0, 2, 4].map((i) => at[i + 1]!.at - at[i]!.at);
      for (const w of widths) expect(Math.abs(w - f.fullness / TUCKS)).toBeLessThan(1e-5);
      expect(Math.abs(widths.reduce((a, b) => a + b, 0) - f.fullness)).toBeLessThan(1e-5);
    });
  });

  it('finds the two banks of a princess seam alike, from the edge to the bust point and on to the edge', () => {
    each((m) => {
      for (const document of [m.shoulder, m.armhole]) {
        const [centre, side] = ['front-centre', 'front-side'].map((id) =>
          document.pieces.find((p) => p.id === id)!,
        );
        const b = xy(centre!.parts[0]!.landmarks['right/bust-point']!);
        const banks = outlines(document).filter((e) => e.role === 'style-line');
        expect(banks.map((e) => e.id).sort()).toEqual(
          [1, 2].flatMap((n) => ['a', 'b'].map((x) => `princess/${n}/${x}`)),
        );
        for (const e of banks) {
          const partner = banks.find((o) => o.id === e.partner)!;
          expect(partner.partner).toBe(e.id);
          expect(centre!.outline.includes(e)).not.toBe(centre!.outline.includes(partner));
          expect(Math.abs(lengthOf(e) - lengthOf(partner))).toBeLessThan(1e-9);
        }
        // The seam of each piece passes through the bust point between its two stretches.
        const joints = centre!.outline.filter((e) => e.role === 'style-line').map(last);
        expect(Math.min(...joints.map((p) => away(p, b)))).toBeLessThan(1e-9);
        expect(side!.outline.filter((e) => e.role === 'style-line')).toHaveLength(2);
      }
    });
  });

  it('finds a smoothed seam changed near the bust point only, by what is said', () => {
    each((m) => {
      for (const id of ['front-centre', 'front-side']) {
        const [was, is] = [m.shoulder, m.smoothed].map((d) => d.pieces.find((p) => p.id === id)!);
        const seam = (p: Piece) => p.outline.filter((e) => e.role === 'style-line');
        const b = xy(was!.parts[0]!.landmarks['right/bust-point']!);
        const now = { segments: seam(is!).flatMap((e) => e.segments) };
        let moved = 0;
        for (const edge of seam(was!)) {
          const fromBust = away(first(edge), b) < 1e-9;
          const length = lengthOf(edge);
          for (const c of curves(edge))
            for (let k = 0; k <= 100; k++) {
              const { at } = on(c, k / 100);
              const place = along(edge, at).at;
              const { off } = along(now, at);
              if ((fromBust ? place : length - place) >= SMOOTH) expect(off).toBeLessThan(1e-6);
              else moved = Math.max(moved, off);
            }
        }
        const said = is!.smoothed![0]!;
        expect(said.reach).toBe(SMOOTH);
        expect(Math.abs(moved - said.moved)).toBeLessThan(1e-6);
        expect(said.moved).toBeGreaterThan(0.1);
        const sum = (p: Piece) => seam(p).reduce((all, e) => all + lengthOf(e), 0);
        expect(Math.abs(sum(was!) - sum(is!) - said.shorter)).toBeLessThan(1e-9);
        for (const role of ROLES) {
          const of = (p: Piece) =>
            p.outline.filter((e) => e.role === role).reduce((all, e) => all + lengthOf(e), 0);
          expect(of(is!)).toBe(of(was!));
        }
        // Smooth from end to end: no corner is left.
        const [one, two] = seam(is!);
        const [u, v] =
          is!.outline.indexOf(one!) + 1 === is!.outline.indexOf(two!)
            ? [endWay(one!), startWay(two!)]
            : [endWay(two!), startWay(one!)];
        expect(Math.abs(u[0] * v[1] - u[1] * v[0])).toBeLessThan(1e-9);
      }
    });
  });

  // Source: trade notes (read: dresspatternmaking.com, style 29): alternate pivots on a circle round the bust point, 1 in at most.
  it('finds parallel darts that share the angle, trued alike, with caps that lie on the seam when folded', () => {
    each(({ backed, capped }) => {
      const piece = fronts(backed)[0]!;
      const sheets = piece.parts.flatMap((p) => p.edges);
      const b = xy(piece.parts.find((p) => p.landmarks['right/bust-point'])!.landmarks['right/bust-point']!);
      const openings = THREE.map((id) => {
        const [into, outOf] = ['b', 'a'].map((x) => sheets.find((e) => e.id === `${id}/${x}`)!);
        expect(into!.segments).toHaveLength(2);
        expect(Math.abs(lengthOf(into!) - lengthOf(outOf!))).toBeLessThan(1e-9);
        const [[px, py], [qx, qy]] = [first(into!), last(outOf!)];
        return Math.atan2(
          (px - b[0]) * (qy - b[1]) - (py - b[1]) * (qx - b[0]),
          (px - b[0]) * (qx - b[0]) + (py - b[1]) * (qy - b[1]),
        );
      });
      for (const angle of openings) expect(Math.abs(angle - dartAngle(backed) / 3)).toBeLessThan(1e-9);

      for (const { dart, sewnPoint } of piece.finished!) {
        const legs = piece.outline.filter((e) => e.dart === dart);
        expect(legs).toHaveLength(2);
        expect(away(last(legs[0]!), xy(sewnPoint))).toBe(0);
        // Between the alternate pivots and the edge, 12.7 mm from the middle of the two.
        const vias = ['b', 'a'].map((x) => {
          const leg = curves(sheets.find((e) => e.id === `${dart}/${x}`)!);
          return leg[0]![3];
        });
        for (const v of vias) expect(Math.abs(away(v, b) - CIRCLE)).toBeLessThan(1e-9);
        const middle: XY = [(vias[0]![0] + vias[1]![0]) / 2, (vias[0]![1] + vias[1]![1]) / 2];
        expect(Math.abs(away(middle, xy(sewnPoint)) - 12.7)).toBeLessThan(1e-9);
      }

      const done = fronts(capped)[0]!;
      for (const dart of THREE) {
        const lines = done.parts.flatMap((p) => p.lines);
        const [into, outOf] = ['b', 'a'].map((x) => lines.find((l) => l.id === `sewn-${dart}/${x}`)!);
        expect(Math.abs(lengthOf(into!) - lengthOf(outOf!))).toBeLessThan(1e-9);
        const caps = done.outline.filter((e) => e.role === 'cap' && e.dart === dart);
        expect(caps).toHaveLength(2);
        expect(Math.abs(lengthOf(caps[0]!) - lengthOf(caps[1]!))).toBeLessThan(1e-9);
      }
      // The lowest dart, folded down on its lower leg: both halves of its cap cover the seam below it.
      const [leg] = done.parts.flatMap((p) => p.lines.filter((l) => l.id === 'sewn-p1/b'));
      const [fold] = done.parts.flatMap((p) => p.lines.filter((l) => l.id === 'fold-p1'));
      const [near, far] = done.outline.filter((e) => e.role === 'cap' && e.dart === 'p1');
      const below = done.outline.filter((e) => e.role === 'side' || e.role === 'waist');
      const seam = { segments: below.flatMap((e) => e.segments) };
      const over = (axis: { readonly segments: Edge['segments'] }, p: XY): XY => {
        const [[ax, ay], , , [dx, dy]] = curves(axis)[0]!;
        const k = ((p[0] - ax) * (dx - ax) + (p[1] - ay) * (dy - ay)) / away([ax, ay], [dx, dy]) ** 2;
        return [2 * (ax + k * (dx - ax)) - p[0], 2 * (ay + k * (dy - ay)) - p[1]];
      };
      for (const half of [near!, far!])
        for (const c of curves(half))
          for (let k = 0; k <= 20; k++) {
            const { at } = on(c, k / 20);
            const lies = over(leg!, half === near ? at : over(fold!, at));
            expect(along(seam, lies).off).toBeLessThan(1e-6);
          }
    });
  });
});
