import fc from 'fast-check';
import type {
  CreditEvent,
  HintEvent,
  MarkEvent,
  ProgressEvent,
  WorkedEvent,
} from '../../src/lib/progress/events.ts';

export const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;
export const DAY = 24 * HOUR;
/** 2026-03-02, 09:00 UTC. */
export const T0 = Date.UTC(2026, 2, 2, 9);

let counted = 0;
const fresh = (): string => `event-${String(++counted).padStart(6, '0')}`;

/** A mark: right at once, well inside the tolerance, in a minute, unless it is said otherwise. */
export const mark = (at: number, change: Partial<MarkEvent> = {}): MarkEvent => ({
  kind: 'mark',
  id: fresh(),
  at,
  device: 'device-one',
  exercise: { kind: 'lesson', id: 'waist-to-side', content: 1 },
  step: 'move',
  skill: 'waist-to-side/slash/plain',
  verdict: 'accepted',
  codes: [],
  error: 0.5,
  hints: 0,
  worked: false,
  seconds: 60,
  level: null,
  ...change,
});
export const wrong = (at: number, change: Partial<MarkEvent> = {}): MarkEvent =>
  mark(at, { verdict: 'needsWork', codes: ['dart-moved/residual'], error: 3, ...change });

export const worked = (at: number, change: Partial<WorkedEvent> = {}): WorkedEvent => {
  const { device, exercise, step, skill } = mark(at);
  return { kind: 'worked', id: fresh(), at, device, exercise, step, skill, ...change };
};
export const hint = (at: number, hints: number, change: Partial<HintEvent> = {}): HintEvent => {
  const { device, exercise, step, skill } = mark(at);
  return { kind: 'hint', id: fresh(), at, device, exercise, step, skill, hints, ...change };
};
export const credit = (at: number, of: MarkEvent, code: string): CreditEvent => {
  const { device, exercise, step, skill } = of;
  return { kind: 'credit', id: fresh(), at, device, exercise, step, skill, of: of.id, code };
};

const SKILLS = ['waist-to-side/slash/plain', 'waist-to-shoulder/pivot/cap', 'notches', 'a-skill-long-gone'];

/** Random histories: few ids of steps and skills, so that occasions run into each other. */
export const events: fc.Arbitrary<readonly ProgressEvent[]> = fc
  .uniqueArray(
    fc.record({
      id: fc.uuid(),
      at: fc.integer({ min: 0, max: 60 * 24 * 40 }).map((minutes) => T0 + minutes * MINUTE),
      device: fc.constantFrom('device-one', 'device-two', 'device-three'),
      exercise: fc.record({
        kind: fc.constantFrom('lesson', 'drill'),
        id: fc.constantFrom('waist-to-side', 'a-lesson-long-gone', 'waist-to-side~seed=12'),
        content: fc.integer({ min: 1, max: 3 }),
      }),
      step: fc.constantFrom('move', 'finish'),
      skill: fc.constantFrom(...SKILLS),
      what: fc.constantFrom('mark', 'mark', 'mark', 'worked', 'hint', 'credit'),
      verdict: fc.constantFrom('notReady', 'needsWork', 'accepted'),
      codes: fc.subarray(['dart-moved/pivot', 'dart-moved/residual', 'notched/pair']),
      error: fc.option(fc.double({ min: 0, max: 9, noNaN: true })),
      hints: fc.nat(3),
      worked: fc.boolean(),
      seconds: fc.nat(600),
      level: fc.option(fc.integer({ min: -2, max: 3 })),
    }),
    { maxLength: 30, selector: ({ id }) => id },
  )
  .map((drafts) => {
    const first = drafts.find(({ what }) => what === 'mark')?.id ?? 'of-nothing';
    return drafts.map(({ what, id, at, device, exercise, step, skill, codes, ...rest }): ProgressEvent => {
      const base = { id, at, device, exercise, step, skill } as const;
      if (what === 'worked') return { kind: 'worked', ...base };
      if (what === 'hint') return { kind: 'hint', ...base, hints: rest.hints };
      if (what === 'credit') return { kind: 'credit', ...base, of: first, code: 'dart-moved/residual' };
      return { kind: 'mark', ...base, codes, ...rest } as MarkEvent;
    });
  });
