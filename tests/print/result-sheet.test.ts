import { describe, expect, it } from 'vitest';
import { cutLine, setAllowance } from '../../src/lib/pattern/allowance.ts';
import { chainOf, outlineOf, seamGroups } from '../../src/lib/pattern/outline.ts';
import type { Piece } from '../../src/lib/pattern/types.ts';
import { resultSheet } from '../../src/lib/print/result-sheet.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Fabric, Work } from '../../src/lib/recipe/types.ts';
import { sampleAttempt } from '../recipe/sample.ts';
import { asPath, measured, readSheet, wellFormed } from './sheet.ts';

/** The sheet is written to a ten-thousandth of a millimetre; half of that on each side of a box. */
const WRITTEN = 2e-4;

const finished = (fabric: Fabric): Work => replay(sampleAttempt('F2', fabric)).work;
const print = (work: Work, fabric: Fabric, lessonTitle = 'A slanted seam') =>
  resultSheet(work, { fabric, units: 'mm', lessonTitle });

/** The pieces that are sewn in the fabric, found by their ids alone. */
const sewn = (work: Work, fabric: Fabric): Piece[] =>
  work.pieces.filter(({ id }) => (fabric === 'woven' ? id.endsWith('@woven') : !id.includes('@')));

const halfOf = (printed: number, full: number) => expect(Math.abs(printed - full / 2)).toBeLessThan(WRITTEN);

describe.each(['knit', 'woven'] as const)('the result sheet of a finished top for a %s', (fabric) => {
  const work = finished(fabric);
  const svg = print(work, fabric);
  const sheet = readSheet(svg);

  it('has the pieces that are sewn in this fabric, and no others', () => {
    const drawn = new Set(sheet.paths.map(({ piece }) => piece));
    expect([...drawn].sort()).toEqual(
      sewn(work, fabric)
        .map(({ id }) => id)
        .sort(),
    );
    expect(drawn.size).toBeGreaterThanOrEqual(3);
  });

  it('draws seam line and cut line at exactly half of the full size', () => {
    for (const piece of sewn(work, fabric)) {
      const lines = { seam: chainOf(outlineOf(piece)), cut: cutLine(piece)!.cut };
      for (const [line, chain] of Object.entries(lines)) {
        const drawn = sheet.paths.filter((path) => path.piece === piece.id && path.line === line);
        expect(drawn).toHaveLength(1);
        const [printed, full] = [measured(drawn[0]!.d), asPath(chain)];
        halfOf(printed.bounds.width, full.bounds.width);
        halfOf(printed.bounds.height, full.bounds.height);
        // A length gathers the rounding of every point.
        expect(Math.abs(printed.length - full.length / 2)).toBeLessThan(WRITTEN * 2 * chain.length);
        // Printed the same way round, not mirrored: clockwise on the screen.
        expect(printed.clockwise).toBe(full.clockwise);
      }
    }
  });

  it('draws every notch once on the front: a stroke from the seam line to the cut line', () => {
    for (const piece of sewn(work, fabric)) {
      const drawn = sheet.paths.filter((path) => path.piece === piece.id && path.line === 'notch');
      const carried = cutLine(piece)!.notches;
      expect(drawn).toHaveLength(piece.id.startsWith('back') ? 2 * carried.length : carried.length);
      drawn.forEach((path, i) => {
        if (piece.id.startsWith('back')) return;
        const { from, to } = carried[i]!;
        const length = Math.sqrt((from.x - to.x) * (from.x - to.x) + (from.y - to.y) * (from.y - to.y));
        halfOf(measured(path.d).length, length);
      });
    }
  });

  it('lays no piece on another, on a test square, or off the sheet', () => {
    const boxes = sewn(work, fabric).map((piece) =>
      sheet.paths
        .filter((path) => path.piece === piece.id)
        .map((path) => measured(path.d).bounds)
        .reduce((all, bounds) => all.unite(bounds)),
    );
    const squares = sheet.squares.map(
      ({ x, y, width, height }) => measured(`M${x} ${y}h${width}v${height}h${-width}Z`).bounds,
    );
    const all = [...boxes, ...squares];
    for (const [i, box] of all.entries()) {
      for (const other of all.slice(i + 1)) expect(box.intersects(other)).toBe(false);
      expect(box.left).toBeGreaterThanOrEqual(0);
      expect(box.top).toBeGreaterThanOrEqual(0);
      expect(box.right).toBeLessThanOrEqual(sheet.width);
      expect(box.bottom).toBeLessThanOrEqual(sheet.height);
    }
  });

  it('says on each piece what it is, how often it is cut, and its place in the set', () => {
    const words = sheet.texts.map((text) => text.words);
    for (const piece of sewn(work, fabric)) expect(words).toContain(piece.label!.name);
    const pieces = sewn(work, fabric);
    const once = pieces.filter(({ label }) => label!.cut === 1 && label!.rightSideUp);
    expect(words.filter((line) => line === 'cut 1, right side up (RSU)')).toHaveLength(once.length);
    expect(once.length).toBeGreaterThanOrEqual(2);
    expect(words.filter((line) => line === 'figure F2, half scale')).toHaveLength(pieces.length);
    expect(words.filter((line) => line === 'allowance included')).toHaveLength(pieces.length);
    pieces.forEach((_, i) => expect(words).toContain(`piece ${i + 1} of ${pieces.length}`));
  });

  it('marks what is eased in where the cloth eases, and nothing where it was taken out', () => {
    const said = sheet.texts.filter(({ words }) => words.startsWith('ease in '));
    expect(said).toHaveLength(fabric === 'knit' ? 2 : 0);
  });

  it('gives lengths in the units that were asked for', () => {
    const inches = readSheet(resultSheet(work, { fabric, units: 'inch', lessonTitle: 'A slanted seam' }));
    const shoulder = (texts: readonly { words: string }[]) =>
      texts[texts.findIndex(({ words }) => words === 'right shoulder seam' || words === 'right shoulder') + 1]
        ?.words;
    expect(shoulder(sheet.texts)).toMatch(/^\d+(\.\d)? mm$/);
    expect(shoulder(inches.texts)).toMatch(/^[\d /]+ in$/);
  });

  it('says of an exercise at half scale which of its two columns has its own lengths', () => {
    const words = (scale?: 'half') =>
      readSheet(resultSheet(work, { fabric, units: 'mm', lessonTitle: 'A drill', scale })).texts.map(
        ({ words }) => words,
      );
    const said = (all: readonly string[]) => all.filter((line) => line.includes('column “on this sheet”'));
    expect(said(words('half'))).toHaveLength(1);
    expect(said(words())).toHaveLength(0);
    expect(words('half')).toContain('on this sheet');
  });

  it('is well-formed, with finite numbers only', () => {
    expect(wellFormed(svg)).toBe(true);
    expect(svg).not.toMatch(/NaN|Infinity|undefined|\[object/);
    const numbers = sheet.paths.flatMap(({ d }) => d.split(/[MLCZ ]+/).filter((word) => word !== ''));
    expect(numbers.length).toBeGreaterThan(100);
    expect(numbers.every((word) => Number.isFinite(Number(word)))).toBe(true);
  });
});

describe('a result sheet', () => {
  const start = startWork({ figure: 'F2' });

  it('is one millimetre on paper for one unit of the drawing', () => {
    // SVG 1.1, section 7.2 and 7.7 (memory): a viewBox as large as the viewport makes one user unit as large as its unit.
    const { width, height, viewBox } = readSheet(print(start, 'knit'));
    expect(viewBox).toBe(`0 0 ${width} ${height}`);
    expect(width).toBeGreaterThan(200);
  });

  it('has test squares of 50 mm and of 2 inches, on which fit-to-page printing shows', () => {
    const { squares, texts } = readSheet(print(start, 'knit'));
    expect(squares.map(({ name, width, height }) => [name, width, height])).toEqual([
      ['50 mm', 50, 50],
      ['2 in', 50.8, 50.8],
    ]);
    // A4 is 210 × 297 mm (ISO 216, memory) and Letter 215.9 × 279.4 mm (memory): the page is fitted by its tighter side.
    const a4OnLetter = Math.min(215.9 / 210, 279.4 / 297);
    const letterOnA4 = Math.min(210 / 215.9, 297 / 279.4);
    const said = texts.map(({ words }) => words).join(' ');
    expect(said).toContain(`A4 fitted on Letter prints at ${Math.round(100 * a4OnLetter)} %`);
    expect(said).toContain(`Letter fitted on A4 at ${Math.round(100 * letterOnA4)} %`);
    // Both show on a square that is read to 1 mm.
    expect(50 - 50 * a4OnLetter).toBeGreaterThan(1);
    expect(50 - 50 * letterOnA4).toBeGreaterThan(1);
  });

  it('draws what is on the table before anything was done: seam lines, no cut lines', () => {
    const { paths, texts } = readSheet(print(start, 'woven'));
    expect(paths.map(({ piece, line }) => `${piece} ${line}`).sort()).toEqual(['back seam', 'front seam']);
    expect(texts.filter(({ words }) => words === 'no allowance')).toHaveLength(2);
  });

  it('writes no allowance where one edge has none yet', () => {
    const front = start.pieces[0]!;
    const some = setAllowance(front, seamGroups(front)[0]!.id, 10);
    if (!('ok' in some)) throw new Error('refused');
    const { paths } = readSheet(print({ ...start, pieces: [some.ok] }, 'knit'));
    expect(paths.map(({ line }) => line)).toEqual(['seam']);
  });

  it('shows text from files as text, whatever it holds', () => {
    const hostile = '</text><script>alert("1")</script>&\u0000\u202e\ud800\'';
    const pieces = start.pieces.map((piece): Piece => ({
      ...piece,
      label: { name: hostile, cut: 1, rightSideUp: true },
    }));
    const svg = print({ ...start, pieces }, 'knit', hostile);
    expect(wellFormed(svg)).toBe(true);
    expect(svg).not.toContain('<script');
    expect(svg.replaceAll('\n', '')).not.toMatch(/\p{Cs}|\p{Cc}|\u202e/u);
    expect(svg).toContain('&lt;/text&gt;&lt;script&gt;');
  });

  it('shortens a name that is too long for its piece', () => {
    const pieces = start.pieces.map((piece): Piece => ({
      ...piece,
      label: { name: 'long '.repeat(100), cut: 1, rightSideUp: true },
    }));
    const { texts, width } = readSheet(print({ ...start, pieces }, 'knit', 'long '.repeat(100)));
    for (const { words } of texts) expect(words.length).toBeLessThanOrEqual(110);
    expect(width).toBeLessThan(1000);
  });

  it('does not write the girths of a body that was measured', () => {
    const own = startWork({ measures: { bust: 913, waist: 737, napeToWaist: 391 } });
    const svg = print(own, 'knit');
    expect(svg).toContain('own measurements');
    // (Nape to waist is the length of centre back, so the pattern itself has it.)
    for (const girth of ['913', '737']) expect(svg).not.toMatch(new RegExp(`\\b${girth}\\b`));
  });

  it('refuses to print a number that is none', () => {
    const grainline = { from: { x: 0, y: Number.NaN }, to: { x: 0, y: 100 } };
    const pieces = start.pieces.map((piece): Piece => ({ ...piece, grainline }));
    expect(() => print({ ...start, pieces }, 'knit')).toThrow(RangeError);
  });
});
