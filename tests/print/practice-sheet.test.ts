import { describe, expect, it } from 'vitest';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';
import { blockOf } from '../../src/lib/lessons/block.ts';
import { outlineOf } from '../../src/lib/pattern/outline.ts';
import { practiceSheet } from '../../src/lib/print/practice-sheet.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import { asPath, measured, readSheet, wellFormed } from './sheet.ts';

/** The sheet is written to a ten-thousandth of a millimetre; half of that on each side of a box. */
const WRITTEN = 2e-4;
/** A4 is 210 mm wide (ISO 216; memory). */
const A4 = 210;

const printed = (id: string) => {
  const lesson = loadLesson(id)!;
  const front = startWork(blockOf(lesson)).block.front;
  const svg = practiceSheet(lesson, front);
  return { lesson, front, svg, sheet: readSheet(svg) };
};

describe.each(lessonIds())('the practice sheet of %s', (id) => {
  const { lesson, front, svg, sheet } = printed(id);

  it('draws every edge of the block at exactly half of its length, the dart legs among them', () => {
    const edges = outlineOf(front);
    expect(edges.filter(({ role }) => role === 'dart-leg').length).toBe(2 * front.darts.length);
    for (const edge of edges) {
      const drawn = sheet.paths.filter(({ line }) => line === edge.id);
      expect(drawn).toHaveLength(1);
      const [paper, full] = [measured(drawn[0]!.d), asPath(edge.chain)];
      expect(Math.abs(paper.length - full.length / 2)).toBeLessThan(WRITTEN * 2 * edge.chain.length);
      expect(Math.abs(paper.bounds.width - full.bounds.width / 2)).toBeLessThan(WRITTEN);
      expect(Math.abs(paper.bounds.height - full.bounds.height / 2)).toBeLessThan(WRITTEN);
    }
  });

  it('prints the edges where the next one begins, and the bust point where the block has it', () => {
    const edges = outlineOf(front);
    const data = edges.map((edge) => sheet.paths.find(({ line }) => line === edge.id)!.d);
    const points = data.map((d) => d.match(/-?[\d.]+ -?[\d.]+/g)!);
    points.forEach((own, i) => expect(points[(i + 1) % points.length]![0]).toBe(own.at(-1)));
    const start = measured(data[0]!).bounds.topLeft;
    const whole = asPath(edges[0]!.chain).bounds.topLeft;
    const cross = sheet.paths.filter(({ line }) => line === 'bust').map(({ d }) => measured(d).bounds.center);
    const bust = front.parts[0]!.landmarks['right/bust-point']!;
    expect(cross).toHaveLength(2);
    for (const at of cross) {
      expect(Math.abs(at.x - start.x - (bust.x - whole.x) / 2)).toBeLessThan(2 * WRITTEN);
      expect(Math.abs(at.y - start.y - (bust.y - whole.y) / 2)).toBeLessThan(2 * WRITTEN);
    }
  });

  it('prints a grainline along centre front, on the block', () => {
    const shaft = measured(sheet.paths.find(({ line }) => line === 'grain')!.d).bounds;
    expect(shaft.width).toBe(0);
    expect(shaft.height).toBeGreaterThan(50);
  });

  it('has a square of 50 mm and one of 2 in (25.4 mm each, by definition of the inch), clear of the block', () => {
    expect(sheet.squares.map(({ name, width, height }) => [name, width, height])).toEqual([
      ['50 mm', 50, 50],
      ['2 in', 50.8, 50.8],
    ]);
    const bottom = Math.max(...sheet.paths.map(({ d }) => measured(d).bounds.bottom));
    for (const { y } of sheet.squares) expect(y).toBeGreaterThan(bottom);
  });

  it('is one millimetre a unit, and no wider than A4', () => {
    expect(sheet.viewBox).toBe(`0 0 ${sheet.width} ${sheet.height}`);
    expect(sheet.width).toBeLessThanOrEqual(A4);
    for (const { x, y } of sheet.texts) {
      expect(x).toBeLessThan(sheet.width);
      expect(y).toBeLessThan(sheet.height);
    }
  });

  it('says the title, every word of every step, and the cautions with blades', () => {
    expect(wellFormed(svg)).toBe(true);
    const words = sheet.texts.map((text) => text.words).join(' ');
    const plain = words.replaceAll('&#39;', "'").replaceAll('&quot;', '"').replaceAll('&lt;', '<');
    const said = plain.replaceAll('&gt;', '>').replaceAll('&amp;', '&').replace(/\s+/g, ' ');
    const asked = [lesson.title, ...lesson.steps.flatMap(({ title, text }) => [title, ...text])];
    for (const line of asked) expect(said).toContain(line.trim());
    for (const care of ['cut away from your body', 'scissors', 'never into your palm', "school's own rules"])
      expect(said).toContain(care);
  });
});

it('writes text as text, never as markup, also a word longer than a line', () => {
  const { lesson, front } = printed('waist-to-side');
  const [step] = lesson.steps;
  const long = 'x'.repeat(400);
  const title = '</text><script>alert("1")</script> & \'two\'';
  const svg = practiceSheet({ ...lesson, title, steps: [{ ...step!, text: [`<b>${long}</b>`] }] }, front);
  expect(svg).not.toContain('<script');
  expect(svg).not.toContain('<b>');
  expect(wellFormed(svg)).toBe(true);
  expect(readSheet(svg).width).toBeLessThanOrEqual(A4);
  expect(svg.match(/x{3,}/g)!.join('')).toBe(long);
});
