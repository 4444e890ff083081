import { describe, expect, it } from 'vitest';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';
import { SOLVERS } from '../../src/lib/lessons/worked/index.ts';

/** The course in teaching order (common practice: from reading the block to an asymmetric design). */
const COURSE = [
  ...['reading-the-block', 'extend-a-dart', 'waist-to-side', 'waist-to-shoulder', 'waist-to-neckline'],
  ...['mid-armhole-by-pivot', 'french-dart', 'centre-front-dart', 'proof-of-fit', 'split-a-dart'],
  ...['finish-a-dart', 'parallel-darts', 'clustered-darts', 'radiating-neck-darts', 'gathers-tucks-ease'],
  ...[
    'shoulder-princess',
    'armhole-princess',
    'line-near-the-bust-point',
    'asymmetric-darts',
    'slanted-seam',
  ],
];

const lessons = lessonIds().map((id) => loadLesson(id)!);

describe.each(lessons)('the lesson $id in the course', (lesson) => {
  it('has its number', () => {
    expect(COURSE).toContain(lesson.id);
    expect(lesson.number).toBe(COURSE.indexOf(lesson.id) + 1);
  });

  it('builds on lessons before it, and on none twice', () => {
    for (const need of lesson.needs) {
      expect(COURSE).toContain(need);
      expect(COURSE.indexOf(need), need).toBeLessThan(COURSE.indexOf(lesson.id));
    }
    expect(new Set(lesson.needs).size).toBe(lesson.needs.length);
  });

  it('can be reached from the first one', () => {
    if (lesson.id !== COURSE[0]) expect(lesson.needs.length).toBeGreaterThan(0);
  });

  it('calls only solvers that there are', () => {
    for (const { worked } of lesson.steps) if (worked) expect([...SOLVERS.keys()]).toContain(worked.by);
  });
});
