import { describe, expect, it } from 'vitest';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';
import { blockOf } from '../../src/lib/lessons/block.ts';
import { drillLesson } from '../../src/lib/lessons/drills/lesson.ts';
import { EXERCISES } from '../../src/lib/lessons/drills/types.ts';
import { variantOf } from '../../src/lib/lessons/drills/variant.ts';
import { allSteps, type Lesson } from '../../src/lib/lessons/types.ts';
import { practiceSheet } from '../../src/lib/print/practice-sheet.ts';
import { replayDocument } from '../../src/lib/recipe/document.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import { drillWords } from '../../src/lib/strings/drills.ts';
import type { Piece as OutsidePiece } from '../recipe/outside-measure.ts';
import { measured, readSheet, wellFormed } from './sheet.ts';
import { paper } from '../support/paper.ts';

/** The sheet is written to a ten-thousandth of a millimetre; half of that on each side of a box. */
const WRITTEN = 2e-4;
/** A4 and Letter, mm (ISO 216; 8.5 × 11 in; memory), less the margin of 8 mm on each side that the sheet asks for. */
const PAPERS = { A4: [210 - 16, 297 - 16], Letter: [215.9 - 16, 279.4 - 16] } as const;

const drills = EXERCISES.flatMap((exercise) =>
  [1, 2, 3, 4].map((seed): readonly [string, Lesson] => [
    `drill ${exercise} ${seed}`,
    drillLesson(variantOf({ exercise, seed, fabric: 'woven', band: 'usual', hints: 0 }), drillWords('inch')),
  ]),
);
const lessons: readonly (readonly [string, Lesson])[] = [
  ...lessonIds().map((id) => [id, loadLesson(id)!] as const),
  ...drills,
];

const printed = (lesson: Lesson) => {
  const { front } = startWork(blockOf(lesson)).block;
  const html = practiceSheet(lesson, front);
  const pages = [...html.matchAll(/<svg .*?<\/svg>/gs)].map(([svg]) => ({ svg, ...readSheet(svg) }));
  // The block as other programs get it: the front's edges in the replay's own document.
  const recipe = {
    format: 'pin-and-pivot/recipe',
    version: 1,
    fabric: 'woven',
    seed: 0,
    commands: [],
  } as const;
  const document: unknown = JSON.parse(JSON.stringify(replayDocument({ ...recipe, block: blockOf(lesson) })));
  const { pieces } = document as { pieces: readonly OutsidePiece[] };
  const edges = pieces.find(({ id }) => id === 'front')!.outline;
  return { front, html, pages, edges };
};
/** An edge of the replay document as a path of paper.js, mm at full size. */
function asPath(edge: ReturnType<typeof printed>['edges'][number]) {
  const path = new paper.Path();
  const at = (row: readonly number[], i: number) => new paper.Point(row[2 * i]!, row[2 * i + 1]!);
  edge.segments.forEach(({ line, cubic }, i) => {
    const row = (line ?? cubic)!;
    if (i === 0) path.moveTo(at(row, 0));
    if (line) path.lineTo(at(row, 1));
    else path.cubicCurveTo(at(row, 1), at(row, 2), at(row, 3));
  });
  return path;
}
interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}
const apart = (a: Box, b: Box): boolean =>
  a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;

describe.each(lessons)('the practice sheet of %s', (_, lesson) => {
  const { front, html, pages, edges } = printed(lesson);
  const [first] = pages;
  const paths = pages.flatMap((page) => page.paths);

  it('draws every edge of the replay document at exactly half of its length, on the first page, the dart legs among them', () => {
    expect(edges.filter(({ role }) => role === 'dart-leg').length).toBe(2 * front.darts.length);
    for (const edge of edges) {
      expect(paths.filter(({ line }) => line === edge.id)).toHaveLength(1);
      const drawn = first!.paths.find(({ line }) => line === edge.id)!;
      const [onPaper, full] = [measured(drawn.d), asPath(edge)];
      expect(Math.abs(onPaper.length - full.length / 2)).toBeLessThan(WRITTEN * 2 * edge.segments.length);
      expect(Math.abs(onPaper.bounds.width - full.bounds.width / 2)).toBeLessThan(WRITTEN);
      expect(Math.abs(onPaper.bounds.height - full.bounds.height / 2)).toBeLessThan(WRITTEN);
    }
  });

  it('prints the edges where the next one begins, and the bust point where the block has it', () => {
    const data = edges.map((edge) => paths.find(({ line }) => line === edge.id)!.d);
    const points = data.map((d) => d.match(/-?[\d.]+ -?[\d.]+/g)!);
    points.forEach((own, i) => expect(points[(i + 1) % points.length]![0]).toBe(own.at(-1)));
    const start = measured(data[0]!).bounds.topLeft;
    const whole = asPath(edges[0]!).bounds.topLeft;
    const cross = paths.filter(({ line }) => line === 'bust').map(({ d }) => measured(d).bounds.center);
    const bust = front.parts[0]!.landmarks['right/bust-point']!;
    expect(cross).toHaveLength(2);
    for (const at of cross) {
      expect(Math.abs(at.x - start.x - (bust.x - whole.x) / 2)).toBeLessThan(2 * WRITTEN);
      expect(Math.abs(at.y - start.y - (bust.y - whole.y) / 2)).toBeLessThan(2 * WRITTEN);
    }
  });

  it('prints a grainline along centre front, on the block', () => {
    const shaft = measured(paths.find(({ line }) => line === 'grain')!.d).bounds;
    expect(shaft.width).toBe(0);
    expect(shaft.height).toBeGreaterThan(50);
  });

  it('is one millimetre a unit, and each page fits between the margins of A4 and of Letter', () => {
    expect(html).toContain('@page{margin:8mm}');
    for (const { width, height, viewBox } of pages) {
      expect(viewBox).toBe(`0 0 ${width} ${height}`);
      for (const [across, down] of Object.values(PAPERS)) {
        expect(width).toBeLessThanOrEqual(across);
        expect(height).toBeLessThanOrEqual(down);
      }
    }
  });

  it('has a square of 50 mm and one of 2 in (25.4 mm each, by definition of the inch)', () => {
    expect(pages.flatMap(({ squares }) => squares.map((s) => [s.name, s.width, s.height]))).toEqual([
      ['50 mm', 50, 50],
      ['2 in', 50.8, 50.8],
    ]);
  });

  it('says where the squares are when they are not beside the block', () => {
    const said = first!.texts.map(({ words }) => words).join(' ');
    expect(said.includes('The test squares are on the next page.')).toBe(first!.squares.length === 0);
  });

  it('keeps block, squares and lines of text clear of each other and of the page’s end', () => {
    for (const page of pages) {
      const boxes: Box[] = page.squares.map(({ x, y, width, height }) => ({
        ...{ left: x, top: y, right: x + width, bottom: y + height },
      }));
      const block = page.paths.filter(({ line }) => line !== 'bust' && line !== 'grain');
      if (block.length > 0) {
        const all = new paper.Group(block.map(({ d }) => measured(d))).bounds;
        boxes.push({ left: all.left, top: all.top, right: all.right, bottom: all.bottom });
      }
      for (const { x, y, size, words } of page.texts) {
        // Captions of the block, and of the squares, lie in them.
        if (['B', 'CF', '50 mm', '2 in'].includes(words)) continue;
        // Wider than any sans-serif sets it on average: 0.55 of its size a letter; from above its capitals to under its tails.
        const box = {
          left: x,
          top: y - 0.8 * size,
          right: x + 0.55 * size * words.length,
          bottom: y + 0.25 * size,
        };
        for (const other of boxes) expect(apart(box, other), words).toBe(true);
        boxes.push(box);
      }
      for (const { left, top, right, bottom } of boxes) {
        expect(Math.min(left, top)).toBeGreaterThanOrEqual(-WRITTEN);
        expect(right).toBeLessThanOrEqual(page.width + WRITTEN);
        expect(bottom).toBeLessThanOrEqual(page.height + WRITTEN);
      }
    }
  });

  it('parts no heading from its text, and fills no page without need', () => {
    const headings = lesson.steps.map(({ title }, i) => `${i + 1}. ${title}`);
    for (const { texts } of pages) expect(headings).not.toContain(plain(texts.at(-1)!.words));
    // Two pages in a row hold more than one would: the gap of 6 mm over a heading would come between them, and a line ends 0.4 of its
    // size below its letters' foot.
    const used = pages.map(({ texts }) => Math.max(...texts.map(({ y, size }) => y + 0.4 * size)));
    for (let i = 2; i < used.length; i += 1) expect(used[i - 1]! + 6 + used[i]!).toBeGreaterThan(262);
  });

  it('says the title, every word of every step, and the cautions with blades', () => {
    for (const { svg } of pages) expect(wellFormed(svg)).toBe(true);
    const words = pages.flatMap(({ texts }) => texts.map((text) => text.words)).join(' ');
    const said = plain(words).replace(/\s+/g, ' ');
    const asked = [lesson.title, ...allSteps(lesson).flatMap(({ title, text }) => [title, ...text])];
    for (const line of asked) expect(said).toContain(line.trim());
    for (const care of ['cut away from your body', 'scissors', 'never into your palm', "school's own rules"])
      expect(said).toContain(care);
    // There is a blade where paper is cut.
    expect(said).not.toContain('nothing can cut you');
  });
});

function plain(words: string): string {
  const quoted = words.replaceAll('&#39;', "'").replaceAll('&quot;', '"').replaceAll('&lt;', '<');
  return quoted.replaceAll('&gt;', '>').replaceAll('&amp;', '&');
}

it('fits the blocks of a thousand drills on a page, with the test squares on the same print', () => {
  for (let seed = 0; seed < 1000; seed += 1) {
    const exercise = EXERCISES[seed % EXERCISES.length]!;
    const lesson = drillLesson(
      variantOf({ exercise, seed, fabric: 'woven', band: 'usual', hints: 0 }),
      drillWords('mm'),
    );
    const { front } = startWork(blockOf(lesson)).block;
    const sizes = practiceSheet({ ...lesson, given: [], steps: [] }, front).match(
      /width="[\d.]+mm" height="[\d.]+mm"/g,
    )!;
    expect(sizes.length).toBeLessThanOrEqual(2);
    for (const size of sizes) expect(size).toBe('width="194mm" height="263mm"');
  }
});

it('says so where a block is larger than a page', () => {
  const lesson = loadLesson('waist-to-side')!;
  const { front } = startWork({
    measures: { bust: 1250, waist: 1100, napeToWaist: 450 },
    form: 'waist',
  }).block;
  const html = practiceSheet(lesson, front);
  expect(html).toContain('print it on larger paper');
  const page = readSheet(/<svg .*?<\/svg>/s.exec(html)![0]);
  const bounds = new paper.Group(page.paths.map(({ d }) => measured(d))).bounds;
  expect(bounds.right).toBeLessThanOrEqual(page.width);
  expect(bounds.bottom).toBeLessThanOrEqual(page.height);
});

it('writes text as text, never as markup, also a word longer than a line', () => {
  const lesson = loadLesson('waist-to-side')!;
  const { front } = printed(lesson);
  const [step] = lesson.steps;
  const long = 'x'.repeat(400);
  const title = '</text><script>alert("1")</script> & \'two\'';
  const html = practiceSheet({ ...lesson, title, steps: [{ ...step!, text: [`<b>${long}</b>`] }] }, front);
  expect(html).not.toContain('<script');
  expect(html).not.toContain('<b>');
  for (const [svg] of html.matchAll(/<svg .*?<\/svg>/gs)) expect(wellFormed(svg)).toBe(true);
  expect(html.match(/x{3,}/g)!.join('')).toBe(long);
});
