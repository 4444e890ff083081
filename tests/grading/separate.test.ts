import { describe, expect, it } from 'vitest';
import { chainEnd, chainStart } from '../../src/lib/geometry/chain.ts';
import { transformChain } from '../../src/lib/geometry/chain-moved.ts';
import { reflectionAcross } from '../../src/lib/geometry/isometry.ts';
import { line } from '../../src/lib/geometry/segment.ts';
import type { Part, Piece } from '../../src/lib/pattern/types.ts';
import { sentence } from '../../src/lib/strings/sentence.ts';
import type { StepContext } from '../../src/lib/grading/types.ts';
import { contextOf, edited, finding, gradeContext, markOf, stateOf } from './marks.ts';

const context = contextOf('separate', edited('separate'));

/** The context with one piece of the finished step changed: what no command can do, a slip of the shears or the tracing wheel. */
const changed = (id: string, change: (piece: Piece) => Piece): StepContext => ({
  ...context,
  after: { ...context.after, pieces: context.after.pieces.map((p) => (p.id === id ? change(p) : p)) },
});
const parts = (change: (part: Part, i: number) => Part) => (piece: Piece) => ({
  ...piece,
  parts: piece.parts.map(change),
});

describe('separate, close and overlay', () => {
  it('finds two pieces whose paper adds up to the front that was cut, and parts that lie on the block', () => {
    const mark = gradeContext('separate', context);
    const area = finding(mark, 'separated/area');
    expect(mark.verdict).toBe('accepted');
    expect(Math.abs(area.measured! - (area.expected as number)) / area.measured!).toBeLessThan(1e-9);
    for (const fit of mark.findings.filter((f) => f.code === 'overlaid/fit'))
      expect(fit.measured).toBeLessThan(1e-6);
    expect(mark.findings.filter((f) => f.code === 'overlaid/fit')).toHaveLength(4);
  });

  it('finds paper that was lost, and says how much', () => {
    const mark = gradeContext(
      'separate',
      changed('lower', (p) => ({ ...p, parts: p.parts.slice(0, 1) })),
    );
    const { measured, expected, state } = finding(mark, 'separated/area');
    expect(state).toBe('wrong');
    expect(measured!).toBeLessThan(expected as number);
  });

  it('finds a part that was traced wrongly: an armhole cut straight', () => {
    const cut = changed(
      'upper',
      parts((part) => ({
        ...part,
        edges: part.edges.map((e) =>
          e.id === 'left/armhole' ? { ...e, chain: [line(chainStart(e.chain), chainEnd(e.chain))] } : e,
        ),
      })),
    );
    const mark = gradeContext('separate', cut);
    expect(mark.verdict).toBe('needsWork');
    const wrong = mark.findings.filter((f) => f.code === 'overlaid/fit' && f.state === 'wrong');
    expect(wrong.map((f) => f.about!.piece)).toEqual(['upper']);
    expect(wrong[0]!.measured).toBeGreaterThan(3);
    expect(wrong[0]!.about!.edge).toBe('left/armhole');
    expect(wrong[0]!.cause).toEqual({ code: 'traced-wrongly', amount: wrong[0]!.measured, unit: 'mm' });
    expect(sentence(wrong[0]!, 'mm')).toMatch(/armhole was traced or cut wrongly: it lies [\d.]+ mm off\.$/);
  });

  it('finds an edge that does not come from the block', () => {
    const other = changed(
      'upper',
      parts((part) => ({
        ...part,
        edges: part.edges.map((e) =>
          e.id === 'left/armhole' ? { ...e, origin: { ...e.origin, edge: 'sleeve' } } : e,
        ),
      })),
    );
    const lost = gradeContext('separate', other).findings.filter((f) => f.code === 'overlaid/coverage');
    expect(lost.map((f) => [f.state, f.about!.edge])).toEqual([['wrong', 'left/armhole']]);
  });

  it('finds a part that lies with its other side up', () => {
    const flip = reflectionAcross({ x: 0, y: 0 }, { x: 0, y: 1 });
    const turned = changed(
      'lower',
      parts((part, i) =>
        i > 0
          ? part
          : { ...part, edges: part.edges.map((e) => ({ ...e, chain: transformChain(e.chain, flip) })) },
      ),
    );
    const causes = gradeContext('separate', turned).findings.flatMap((f) => f.cause?.code ?? []);
    expect(causes).toContain('turned-over');
  });
});

describe('working darts', () => {
  const to = (dx: number) =>
    markOf(
      'working-darts',
      edited('working-darts', (c) =>
        c.do === 'extend-dart' && c.dart === 'left' ? { ...c, to: { landmark: 'left/bust-point', dx } } : c,
      ),
    );

  it('run to within 1/16 in (1.6 mm) of the bust point (read: Threads no. 200, via the trade notes)', () => {
    expect(stateOf(to(1.5), 'darts-extended/tip', { dart: 'left' })).toBe('right');
    expect(stateOf(to(1.7), 'darts-extended/tip', { dart: 'left' })).toBe('wrong');
    expect(finding(to(4), 'darts-extended/tip', { dart: 'left' }).measured).toBeCloseTo(4, 9);
  });
});

describe('labels', () => {
  const labelled = (change: object, piece = 'upper') =>
    markOf(
      'label-and-grain',
      edited('label-and-grain', (c) => (c.do === 'label' && c.piece === piece ? { ...c, ...change } : c)),
    );

  it.each([
    [{ cut: 1 }, 'upper', 'accepted'],
    [{ cut: 2 }, 'upper', 'needsWork'],
    [{ cut: 1 }, 'back', 'accepted'],
    [{ cut: 3 }, 'back', 'needsWork'],
    [{ rightSideUp: false }, 'lower', 'needsWork'],
    [{ name: '  ' }, 'lower', 'needsWork'],
    [{ name: ' UPPER front ' }, 'lower', 'needsWork'],
    [{ name: 'Unterteil' }, 'lower', 'accepted'],
  ] as const)('%j on the %s: %s', (change, piece, verdict) => {
    expect(labelled(change, piece).verdict).toBe(verdict);
  });
});
