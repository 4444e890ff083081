import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyTo } from '../../src/lib/geometry/isometry.ts';
import { distance } from '../../src/lib/geometry/point.ts';
import type { Box, Point } from '../../src/lib/geometry/types.ts';
import { isBack, pieceSet } from '../../src/lib/machines/scene.ts';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { workedLesson } from '../../src/lib/lessons/worked/index.ts';
import { TOOLS } from '../../src/lib/machines/tools/index.ts';
import { replayByStep } from '../../src/lib/recipe/replay.ts';
import type { CommandName } from '../../src/lib/recipe/types.ts';
import { angleArc } from '../../src/lib/table/arc.ts';
import { moved, pieceBox } from '../../src/lib/table/boxes.ts';
import { placeLabels, type Label } from '../../src/lib/table/labels.ts';
import '../../src/lib/table/phases/block.ts';
import { layOut, placeOf } from '../../src/lib/table/layout.ts';
import { findingMarks } from '../../src/lib/table/marks.ts';
import { pieceModel } from '../../src/lib/table/model.ts';
import { overlayOf } from '../../src/lib/table/overlay.ts';
import { frameAt, scenesOf, totalTime } from '../../src/lib/table/replay.ts';
import '../../src/lib/table/phases/cut.ts';
import '../../src/lib/table/phases/finish.ts';
import { rulerAt } from '../../src/lib/table/ruler.ts';
import { stepOf } from '../../src/lib/table/runner.svelte.ts';
import { spoken, targets } from '../../src/lib/table/targets.ts';
import { walked } from '../../src/lib/grading/checks/walked.ts';
import { walkModel } from '../../src/lib/table/walk.ts';
import { sampleAttempt, STEPS } from '../recipe/sample.ts';

const steps = replayByStep(sampleAttempt('F4', 'woven'), STEPS);
const after = (id: (typeof STEPS)[number]) => steps.get(id)!.after;
const before = (id: (typeof STEPS)[number]) => steps.get(id)!.before;

const apart = (a: Box, b: Box): boolean =>
  a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY;

describe('layOut', () => {
  it.each([0.4, 0.8, 1.3, 2.4])('lays no piece on another on a table %f times as wide as high', (aspect) => {
    for (const id of STEPS) {
      const pieces = pieceSet(after(id), 'woven');
      const layout = layOut(pieces, {}, aspect);
      const boxes = pieces.map((piece) => moved(pieceBox(piece), placeOf(layout, piece.id)));
      boxes.forEach((box, i) => boxes.slice(i + 1).forEach((other) => expect(apart(box, other)).toBe(true)));
    }
  });

  it('moves a placed piece by what was asked, and nothing else', () => {
    const pieces = after('open-out').pieces;
    const at = (placed: Parameters<typeof layOut>[1]) =>
      applyTo(placeOf(layOut(pieces, placed, 1.5), 'back'), { x: 0, y: 0 });
    const [was, is] = [at({}), at({ back: { dx: 30, dy: -12, angle: 0 } })];
    expect([is.x - was.x, is.y - was.y]).toEqual([expect.closeTo(30, 9), expect.closeTo(-12, 9)]);
  });
});

describe.each(['shoulder-princess', 'armhole-princess'])('the pieces of %s', (id) => {
  const { work } = workedLesson(loadLesson(id)!, 'woven');
  const boxOf = (piece: string) => pieceBox(work.pieces.find((one) => one.id === piece)!);
  const [side, centre] = work.pieces
    .filter((piece) => !isBack(piece))
    .map(({ id }) => id)
    .toSorted((a, b) => boxOf(a).minX - boxOf(b).minX) as [string, string];

  it.each([1.3, 2.4])('lie as they were on the body, on their height, %f times as wide as high', (aspect) => {
    const layout = layOut(
      work.pieces.filter((piece) => !isBack(piece)),
      {},
      aspect,
    );
    const lies = (piece: string) => moved(boxOf(piece), placeOf(layout, piece));
    expect(lies(side).maxX).toBeLessThan(lies(centre).minX);
    expect(lies(side).minY - lies(centre).minY).toBeCloseTo(boxOf(side).minY - boxOf(centre).minY, 9);
  });
});

describe('pieceModel', () => {
  it('draws a sheet that did not change from the same strings', () => {
    const [one, two] = [before('first-dart'), after('first-dart')].map((work) =>
      work.pieces.find(({ id }) => id === 'back')!,
    );
    expect(pieceModel(one!)).toBe(pieceModel(two!));
  });

  it('shows the cut line only once every seam has its width', () => {
    const cut = (id: (typeof STEPS)[number]) =>
      pieceSet(after(id), 'woven').map((piece) =>
        pieceModel(piece).strokes.some(({ stroke }) => stroke === 'cut'),
      );
    expect(cut('leftover').some(Boolean)).toBe(false);
    expect(cut('allowances').every(Boolean)).toBe(true);
  });

  it('tapes every pair of legs that was closed, and keeps old notches as ghosts', () => {
    const pieces = pieceSet(after('leftover'), 'woven').map(pieceModel);
    expect(
      pieces
        .filter(({ tapes }) => tapes.length > 0)
        .map(({ cloth }) => cloth)
        .sort(),
    ).toEqual(['lower', 'upper']);
    expect(pieces.some(({ strokes }) => strokes.some(({ stroke }) => stroke === 'ghost-notch'))).toBe(true);
  });
});

describe('overlayOf', () => {
  it('lays each rigid part on the block where it was cut from', () => {
    const work = after('separate');
    const laid = overlayOf(work, pieceSet(work, 'woven'))!;
    expect(laid.ids).toEqual(expect.arrayContaining(['upper', 'lower']));
    // The block's rigid motions: engine tolerance 1e-6 mm (trade notes, close and overlay; read: NIMI p. 195, Erwin p. 31).
    for (const part of laid.parts) expect(part.residual).toBeLessThan(1e-6);
    expect(laid.parts).toHaveLength(4);
  });
});

describe('a treated piece on the block', () => {
  it('differs only where the treatment took off or added, each sliver told once', () => {
    const work = { ...after('leftover'), overlaid: ['upper@woven', 'lower@woven'] };
    const laid = overlayOf(work, pieceSet(work, 'woven'))!;
    for (const part of laid.parts) expect(part.residual).toBeLessThan(1e-6);
    // Two bridges, one shoulder end and one side end: what step 10 does to the woven (common practice: trim and true).
    expect(laid.slivers.filter(({ label }) => label !== undefined)).toHaveLength(4);
    const untreated = overlayOf(after('separate'), pieceSet(after('separate'), 'knit'))!;
    expect(untreated.slivers).toEqual([]);
  });
});

describe('targets', () => {
  const tools: readonly CommandName[] = Object.keys(TOOLS) as CommandName[];

  it('have their own ids and words in every step with every tool', () => {
    let seen = 0;
    for (const id of STEPS)
      for (const tool of tools) {
        const list = targets(before(id), tool, { fabric: 'woven', units: 'mm' });
        expect(new Set(list.map((target) => target.id)).size).toBe(list.length);
        for (const target of list) {
          expect(spoken(target)).not.toMatch(/undefined|NaN|^,|^$/);
          expect(target.actions.length).toBeGreaterThan(0);
        }
        seen += list.length;
      }
    expect(seen).toBeGreaterThan(300);
  });

  it('do not give the names away that the first step asks for', () => {
    const list = targets(before('read-the-block'), 'identify', {
      fabric: 'knit',
      units: 'mm',
      anonymous: true,
    });
    for (const target of list)
      expect(spoken(target)).not.toMatch(/bust point|dart leg|neck point|centre front seam/);
    expect(new Set(list.map(spoken)).size).toBe(list.length);
  });

  it('tell how far a line point is from both bust points', () => {
    const list = targets(after('style-line'), 'draw-line', { fabric: 'knit', units: 'inch' });
    const point = list.find(({ id }) => id === 'point:1')!;
    expect(point.measures.map(({ label }) => label)).toEqual(
      expect.arrayContaining(['along the line', 'from the right bust point', 'from the left bust point']),
    );
  });
});

describe('placeLabels', () => {
  it('writes over no dart leg, no bust point and no other dimension line where there is room beside them', () => {
    // A dart as narrow as on a phone, both of whose legs are measured.
    const bust = { x: 230, y: 200 };
    const [upper, lower] = [
      { x: 90, y: 200 },
      { x: 96, y: 250 },
    ];
    const middle = (p: Point): Point => ({ x: (p.x + bust.x) / 2, y: (p.y + bust.y) / 2 });
    const reading = (id: string, end: Point): Label => ({
      id,
      text: '165 mm',
      at: middle(end),
      tone: 'reading',
      line: [bust, end],
    });
    const legs = [
      [upper, bust],
      [lower, bust],
    ] as const;
    const angle: Label = { id: 'angle', text: '18.5°', at: bust, tone: 'reading' };
    const placed = placeLabels([reading('a', upper), reading('b', lower), angle], [], 390, 450, legs, [bust]);
    expect(placed).toHaveLength(3);
    for (const { id, x, y, width, height } of placed) {
      const within = (p: Point) => p.x > x && p.x < x + width && p.y > y && p.y < y + height;
      for (const [p, q] of legs)
        for (let i = 0; i <= 100; i++)
          expect(within({ x: p.x + ((q.x - p.x) * i) / 100, y: p.y + ((q.y - p.y) * i) / 100 }), id).toBe(
            false,
          );
    }
  });

  it('covers no label with another while there is room', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            x: fc.double({ min: 100, max: 1300, noNaN: true }),
            y: fc.double({ min: 60, max: 840, noNaN: true }),
          }),
          { maxLength: 8 },
        ),
        (points) => {
          const labels = points.map((at, i): Label => ({ id: `${i}`, text: '12.5 mm', at, tone: 'reading' }));
          const placed = placeLabels(labels, [], 1440, 900);
          const boxes = placed.map(({ x, y, width, height }) => ({
            minX: x,
            minY: y,
            maxX: x + width,
            maxY: y + height,
          }));
          return boxes.every((box, i) => boxes.slice(i + 1).every((other) => apart(box, other)));
        },
      ),
      { numRuns: 200 },
    );
  });

  it('keeps a label in the window', () => {
    const [label] = placeLabels(
      [{ id: 'a', text: 'passes 14.2 mm', at: { x: 795, y: 3 }, tone: 'reading' }],
      [],
      800,
      600,
    );
    expect(label!.x + label!.width).toBeLessThanOrEqual(800);
    expect(label!.y).toBeGreaterThanOrEqual(0);
  });

  it('leads to its point from a label that had to stand off, and from no other', () => {
    const at = { x: 200, y: 100 };
    const leads = true;
    const labels: Label[] = [
      ...['a', 'b', 'c'].map((id): Label => ({ id, text: 'dart leg', at, tone: 'reading' })),
      { id: 'd', text: 'the upper dart leg', at, tone: 'name', leads },
      { id: 'e', text: 'the neck point', at: { x: 500, y: 400 }, tone: 'name', leads },
    ];
    const handles = [-1, 1].flatMap((x) => [-1, 1].map((y) => ({ x: at.x + 20 * x, y: at.y + 20 * y })));
    const placed = placeLabels(labels, handles, 800, 600);
    const [off, beside] = placed.slice(-2);
    const [from, to] = off!
      .lead!.slice(1)
      .split('L')
      .map((one) => one.split(' ').map(Number));
    // It ends in the point, and begins on the label's rim.
    expect([off!.x + to![0]!, off!.y + to![1]!]).toEqual([at.x, at.y]);
    expect(from![0] === 0 || from![0] === off!.width || from![1] === 0 || from![1] === off!.height).toBe(
      true,
    );
    expect(beside!.lead).toBeUndefined();
    expect(placed[0]!.lead).toBeUndefined();
  });

  it('keeps names off the ruler and the zoom buttons, on the piece that they name where they cannot stand below it', () => {
    const size = { width: 390, height: 234 };
    const at = (x: number) => ({ x, y: size.height - 40 });
    const labels: Label[] = [
      { id: 'a', text: 'back, left half', at: at(90), tone: 'name', sits: 'middle' },
      { id: 'b', text: 'back, right half', at: at(310), tone: 'name', sits: 'middle' },
    ];
    const placed = placeLabels(labels, [], size.width, size.height);
    expect(placed).toHaveLength(2);
    for (const { y, height } of placed) expect(y + height).toBeLessThanOrEqual(size.height - 36);
  });

  it('lets what only helps go out of sight with its point, and keeps what is measured in sight', () => {
    const at = { x: -60, y: 300 };
    const placed = (tone: Label['tone']) => placeLabels([{ id: 'b', text: 'B2', at, tone }], [], 800, 600);
    const inSight = ({ x, width }: { x: number; width: number }) => x + width > 0;
    expect(placed('soft').filter(inSight)).toEqual([]);
    expect(placed('reading').filter(inSight)).toHaveLength(1);
  });

  it('leaves out what only helps where there is no room', () => {
    const at = { x: 200, y: 100 };
    const labels: Label[] = [
      { id: 'a', text: 'upper piece', at, tone: 'name', sits: 'middle' },
      { id: 'b', text: 'lower piece', at: { x: 200, y: 120 }, tone: 'name', sits: 'middle' },
      { id: 'c', text: 'wearer’s right', at, tone: 'soft', sits: 'middle' },
    ];
    expect(placeLabels(labels, [], 800, 600).map(({ id }) => id)).toEqual(['a', 'b']);
  });
});

describe('the demonstration', () => {
  const start = before('first-dart');
  const commands = steps.get('first-dart')!.commands;
  const scenes = scenesOf(start, commands);

  it('ends with what the commands make of the learner’s own work', () => {
    expect(frameAt(scenes, totalTime(scenes) - 1, false)!.work).toEqual(after('first-dart'));
    expect(frameAt(scenes, totalTime(scenes) + 1, false)).toBeUndefined();
  });

  it('turns only what the turn moves', () => {
    const turning = scenes.findIndex(({ command }) => command.do === 'turn');
    const middle = totalTime(scenes.slice(0, turning)) + 600;
    const frame = frameAt(scenes, middle, false)!;
    const parts = frame.work.pieces.find(({ id }) => id === 'front')!.parts.length;
    expect(Object.keys(frame.turning ?? {})).toHaveLength(1);
    expect(parts).toBe(2);
  });

  it('moves nothing where motion is to be reduced', () => {
    for (let ms = 0; ms < totalTime(scenes); ms += 100) {
      const frame = frameAt(scenes, ms, true)!;
      expect(frame.turning).toBeUndefined();
      expect(frame.cut).toBeUndefined();
    }
  });

  it('leaves out what cannot be followed', () => {
    expect(scenesOf(before('open-out'), commands)).toEqual([]);
  });
});

describe('small things', () => {
  it('moves by 1 mm at half scale, with Shift by 10, with Alt by a tenth', () => {
    const key = (shiftKey: boolean, altKey: boolean) =>
      stepOf({ key: 'ArrowRight', shiftKey, altKey })!.x / 2;
    expect([key(false, false), key(true, false), key(false, true)]).toEqual([1, 10, 0.1]);
    expect(stepOf({ key: 'a', shiftKey: false, altKey: false })).toBeUndefined();
  });

  it('draws the arc of an angle from one ray to the other', () => {
    // Memory: an SVG arc command is A rx ry rotation large-arc sweep x y; from (10, 0) a quarter clockwise ends at (0, 10).
    const numbers = angleArc({ x: 1, y: 0 }, { x: 0, y: 1 }, 10)
      .match(/-?[\d.]+(e-?\d+)?/g)!
      .map(Number);
    expect(distance({ x: numbers[0]!, y: numbers[1]! }, { x: 10, y: 0 })).toBeLessThan(0.01);
    const [x, y] = numbers.slice(7, 9);
    expect(distance({ x: x!, y: y! }, { x: 0, y: 10 })).toBeLessThan(0.01);
  });

  it('shows a ruler that is round at half scale', () => {
    expect(rulerAt(1.2, 'mm').text).toBe('50 mm half scale, 100 mm full size');
    expect(rulerAt(1.2, 'inch').text).toBe('2 in half scale, 4 in full size');
    expect(rulerAt(1.2, 'half mm').text).toBe('50 mm half scale, as all lengths here');
    expect(rulerAt(1.2, 'half mm').d).toBe(rulerAt(1.2, 'mm').d);
  });

  it('walks the seams of a treated set side by side', () => {
    const model = walkModel(after('leftover'), 'woven', { seam: 'right/shoulder' }, 'mm')!;
    expect(model.rows.length).toBeGreaterThan(0);
    for (const row of model.rows) {
      expect(row.a.from).toBeGreaterThanOrEqual(0);
      expect(Math.max(row.a.to, row.b.to)).toBeLessThanOrEqual(1 + 1e-9);
    }
  });

  it('walks the cut lines of front and back, and the mark tells the same', () => {
    const work = after('label-and-grain');
    const fabric = 'woven';
    for (const seam of ['right/shoulder', 'left/shoulder', 'right/side', 'left/side']) {
      const along = (what: string) => walkModel(work, fabric, { seam, along: what }, 'mm')!;
      const [cut, sewn] = [along('cut'), along('seam')];
      // Common practice: allowances at both ends, of some 10 to 25 mm, make a cut line longer than its seam.
      for (const side of ['a', 'b'] as const) {
        const longer = parseFloat(cut[side]) - parseFloat(sewn[side]);
        expect(longer, `${fabric} ${seam} ${side}`).toBeGreaterThan(0);
        expect(longer, `${fabric} ${seam} ${side}`).toBeLessThan(100);
      }
      const walk = { seam, as: fabric, along: 'cut', says: 'match' } as const;
      const [finding] = walked({ before: work, after: { ...work, walked: [walk] }, fabric } as never, {
        check: 'walked',
        names: { seams: [seam] },
      });
      const amount = finding!.cause!.amount!;
      expect(amount).toBeCloseTo(parseFloat(cut.a) - parseFloat(cut.b), 0);
    }
  });

  it('puts a finding on the piece that it names', () => {
    const pieces = pieceSet(after('separate'), 'knit');
    const layout = layOut(pieces, {}, 1.5);
    const at = { x: 0, y: 0 };
    const marks = findingMarks(
      ['upper', 'lower'].map((piece) => ({
        check: 'x',
        code: 'x/y',
        state: 'wrong',
        unit: 'mm',
        measured: 3,
        where: { kind: 'point', at },
        about: { piece },
      })),
      pieces,
      layout,
      'mm',
    );
    expect(marks.map((mark) => mark.at)).toEqual(
      ['upper', 'lower'].map((id) => applyTo(placeOf(layout, id), at)),
    );
    expect(marks[0]!.text).toBe('3 mm');
  });
});
