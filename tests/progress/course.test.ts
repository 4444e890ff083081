import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addToCourse,
  COURSE_KEY,
  courseToText,
  mergeCourses,
  NOTHING_DONE,
  parseCourse,
  readCourse,
  type CourseRecord,
} from '../../src/lib/progress/course.ts';
import type { Backend } from '../../src/lib/progress/store.ts';

const backendOf = (texts: Map<string, string>): Backend => ({
  get: async (key) => texts.get(key),
  put: async (key, text) => void texts.set(key, text),
});

const day = fc
  .record({ y: fc.integer({ min: 2024, max: 2031 }), m: fc.integer({ min: 1, max: 12 }), d: fc.nat(27) })
  .map(({ y, m, d }) => `${y}-${String(m).padStart(2, '0')}-${String(d + 1).padStart(2, '0')}`);
const id = fc.constantFrom('a', 'b', 'c', 'waist-to-side', 'slanted-seam');
const records: fc.Arbitrary<CourseRecord> = fc.record({
  done: fc.dictionary(id, fc.record({ on: day, content: fc.nat(9) })).map((all) => ({ ...all })),
  testedOut: fc.dictionary(id, fc.record({ on: day, by: id })).map((all) => ({ ...all })),
});

describe('what was achieved in the course', () => {
  it('is read as it was written', () => {
    fc.assert(
      fc.property(records, (record) => {
        expect(parseCourse(courseToText(record))).toEqual(record);
      }),
    );
  });

  it.each([
    ['no JSON', '{'],
    ['another format', '{"format":"pin-and-pivot/progress","version":1,"done":{},"testedOut":{}}'],
    ['a newer version', '{"format":"pin-and-pivot/course","version":2,"done":{},"testedOut":{}}'],
    ['a list', '[]'],
    ['half of it', '{"format":"pin-and-pivot/course","version":1,"done":{}}'],
    ['a day that is none', courseToText({ done: { a: { on: 'today', content: 1 } }, testedOut: {} })],
    [
      'a name that every object has',
      courseToText({ done: { constructor: { on: '2026-01-01', content: 1 } }, testedOut: {} }),
    ],
    ['a test of nothing', courseToText({ done: {}, testedOut: { a: { on: '2026-01-01', by: '' } } })],
  ])('is not read from %s', (_, text) => expect(parseCourse(text)).toBeUndefined());

  it('is put together from two devices in any order, as often as one likes, and nothing is lost or doubled', () => {
    fc.assert(
      fc.property(records, records, records, (a, b, c) => {
        expect(mergeCourses(a, a)).toEqual(a);
        expect(mergeCourses(a, NOTHING_DONE)).toEqual(a);
        expect(mergeCourses(a, b)).toEqual(mergeCourses(b, a));
        expect(mergeCourses(mergeCourses(a, b), c)).toEqual(mergeCourses(a, mergeCourses(b, c)));
        for (const kind of ['done', 'testedOut'] as const) {
          const both = mergeCourses(a, b)[kind];
          expect(Object.keys(both).sort()).toEqual(
            [...new Set([...Object.keys(a[kind]), ...Object.keys(b[kind])])].sort(),
          );
          for (const [key, { on }] of Object.entries(both))
            expect(on).toBe(
              [a[kind][key]?.on, b[kind][key]?.on].filter((one) => one !== undefined).sort()[0],
            );
        }
      }),
    );
  });

  it('is added to, and the first day stays', async () => {
    const texts = new Map<string, string>();
    const backend = backendOf(texts);
    expect(await readCourse(backend)).toEqual(NOTHING_DONE);
    await addToCourse(backend, { done: { a: { on: '2026-02-01', content: 1 } } });
    await addToCourse(backend, { done: { a: { on: '2026-03-01', content: 2 } } });
    await addToCourse(backend, { testedOut: { b: { on: '2026-03-01', by: 'c' } } });
    expect(await readCourse(backend)).toEqual({
      done: { a: { on: '2026-02-01', content: 1 } },
      testedOut: { b: { on: '2026-03-01', by: 'c' } },
    });
  });

  it('that cannot be read is moved aside before anything is written over it', async () => {
    const texts = new Map([[COURSE_KEY, 'broken']]);
    expect(await readCourse(backendOf(texts))).toEqual(NOTHING_DONE);
    await addToCourse(backendOf(texts), { done: { a: { on: '2026-02-01', content: 1 } } });
    expect(texts.get(`${COURSE_KEY}:unreadable`)).toBe('broken');
    expect(Object.keys((await readCourse(backendOf(texts))).done)).toEqual(['a']);
  });
});
