import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dartAngle } from '../../src/lib/pattern/measure.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Command, TurnBy, Work } from '../../src/lib/recipe/types.ts';
import '../support/seed.ts';
import {
  B,
  type Move,
  anyMove,
  done,
  edgesOf,
  extended,
  front,
  on,
  outlinesApart,
  refusal,
  slashed,
} from './darts.ts';

const SLASH = 'slash';
const CLOSED: TurnBy = { until: 'legs-meet' };

const drawn = (move: Move): Command => slashed(SLASH, on(move.edge, move.at))[0]!;
const ready = (move: Move): Work => done(startWork(move.block), ...extended(move));

function slashAndSpread(move: Move, by: TurnBy, part = 'freed'): Work {
  return done(ready(move), ...slashed(SLASH, on(move.edge, move.at)), {
    do: 'turn',
    dart: move.dart,
    into: SLASH,
    part,
    about: B(),
    by,
  });
}

const pinAndSwing = (move: Move, by: TurnBy, part: 'freed' | 'rest' = 'freed'): Work =>
  done(ready(move), {
    do: 'pivot',
    dart: move.dart,
    slash: SLASH,
    from: on(move.edge, move.at),
    about: B(),
    by,
    part,
  });

/** Before the dart in outline order the freed part carries the leg that runs into the tip, and closes the dart clockwise; else the other leg. */
function typed(move: Move): TurnBy {
  const edges = edgesOf(move.form);
  const dartAt = { right: 'right/side-upper', 'right/waist-dart': 'right/waist-outer' }[move.dart]!;
  const before = edges.indexOf(move.edge) < edges.indexOf(dartAt);
  const angle = dartAngle(front(ready(move)), move.dart)!;
  return { angle: before ? angle : -angle };
}

// Source: teaching slides on dart manipulation (read, trade notes): slash and spread and pivot give the same pattern; 1e-9 mm is ours.
describe('a dart moved by slash and spread, by the pin, or by its typed angle', () => {
  it('gives one outline to 1e-9 mm on 1,000 random blocks, forms and places', () => {
    let moves = 0;
    const seen = new Set<string>();
    fc.assert(
      fc.property(anyMove, (move) => {
        fc.pre(refusal(ready(move), drawn(move)) === undefined);
        moves++;
        seen.add(`${move.form} ${move.dart} ${move.edge}`);
        const closed = front(slashAndSpread(move, CLOSED));
        const dart = closed.darts.find((d) => d.id === move.dart)!;
        expect(dart.state).toBe('closed');
        for (const other of [
          pinAndSwing(move, CLOSED),
          slashAndSpread(move, typed(move)),
          pinAndSwing(move, typed(move)),
          slashAndSpread(move, { share: 1 }),
        ])
          expect(outlinesApart(front(other), closed)).toBeLessThan(1e-9);
      }),
      { numRuns: 1000 },
    );
    expect(moves).toBe(1000);
    // 7 edges in the side form, 8 for either dart of the two-dart form, 7 in the waist form: nearly all 30 came up.
    expect(seen.size).toBeGreaterThan(28);
  }, 300_000);
});
