import fc from 'fast-check';
import { expect, it, vi } from 'vitest';
import { chainEnd, chainStart } from '../../src/lib/geometry/chain.ts';
import { samePoint } from '../../src/lib/geometry/point.ts';
import { openMouths } from '../../src/lib/machines/tools/back-off.ts';
import { TOOLS } from '../../src/lib/machines/tools/index.ts';
import { cutLine } from '../../src/lib/pattern/allowance.ts';
import { outlineOf, seamGroups } from '../../src/lib/pattern/outline.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Command } from '../../src/lib/recipe/types.ts';
import { real } from '../support/real.ts';
import { anyMove, B, extended, on, slashed } from './darts.ts';

vi.setConfig({ testTimeout: 120_000 });

const darts = fc.constantFrom('right', 'right/waist-dart', 's1', 's2', 'none');
const folds = fc.constantFrom('centre' as const, 'side' as const, 'up' as const, 'down' as const);
const kinds = fc.constantFrom('gathers' as const, 'ease' as const, 'tucks' as const);
const mm = real(-5, 160);
const pieces = fc.constantFrom('front', 'front-centre', 'front-side', 'back');

const anyFinish: fc.Arbitrary<Command> = fc.oneof(
  fc.record({ do: fc.constant('back-off' as const), dart: darts, by: mm }),
  fc.record({ do: fc.constant('true-legs' as const), dart: darts }),
  fc.record({ do: fc.constant('cap' as const), dart: darts, fold: folds }),
  fc.record({
    do: fc.constant('fullness' as const),
    dart: darts,
    as: kinds,
    before: mm,
    after: mm,
    tucks: fc.nat({ max: 5 }),
  }),
  fc.record({ do: fc.constant('part-at-darts' as const), darts: fc.tuple(darts, darts) }),
  fc.record({
    do: fc.constant('smooth-seam' as const),
    piece: pieces,
    at: fc.constantFrom('right/bust-point', 'right/underarm'),
    reach: mm,
  }),
  fc.record({
    do: fc.constant('turn' as const),
    dart: darts,
    into: darts,
    part: fc.constant('freed'),
    about: fc.constant(B()),
    by: fc.record({ share: real(0, 1) }),
  }),
);

// No outside value: what is asked for here is that nothing breaks, whatever a learner does.
it('finishing in any order never throws, keeps outlines closed and names unique, and leaves a cut line to be drawn', () => {
  const done = new Map<string, number>();
  const any = fc.tuple(
    anyMove,
    real(0.1, 0.9),
    fc.boolean(),
    fc.array(anyFinish, { minLength: 1, maxLength: 8 }),
  );
  fc.assert(
    fc.property(any, ([move, at, via, commands]) => {
      let work = startWork(move.block);
      const before: Command[] = [
        ...extended({ ...move, both: true }),
        ...slashed('s1', on(move.edge, move.at), via ? B(-14, -14) : undefined),
        ...slashed('s2', on('right/shoulder', at)),
        { do: 'turn', dart: move.dart, into: 's1', part: 'freed', about: B(), by: { share: 0.4 } },
      ];
      for (const command of [...before, ...commands]) {
        const next = apply(work, command);
        if ('refused' in next) {
          expect(next.refused.code).not.toBe('unknown-command');
          continue;
        }
        work = next.work;
        done.set(command.do, (done.get(command.do) ?? 0) + 1);
        const scene = { work, fabric: 'knit', options: {}, reach: 5 } as const;
        openMouths(scene);
        for (const tool of [
          'back-off',
          'true-legs',
          'cap',
          'fullness',
          'part-at-darts',
          'smooth-seam',
        ] as const) {
          TOOLS[tool].targets(scene);
          TOOLS[tool].readings?.(scene, work);
        }
        for (const piece of work.pieces) {
          const outline = outlineOf(piece);
          expect(new Set(outline.map((e) => e.id)).size).toBe(outline.length);
          outline.forEach((e, i) =>
            expect(samePoint(chainEnd(e.chain), chainStart(outline[(i + 1) % outline.length]!.chain))).toBe(
              true,
            ),
          );
        }
      }
      for (const piece of work.pieces) {
        const allowances = Object.fromEntries(seamGroups(piece).map((g) => [g.id, 10]));
        expect(cutLine({ ...piece, allowances })!.cut.length).toBeGreaterThan(2);
      }
    }),
    { numRuns: 400 },
  );
  for (const name of ['back-off', 'true-legs', 'cap', 'fullness', 'part-at-darts'])
    expect(done.get(name) ?? 0, name).toBeGreaterThan(20);
});
