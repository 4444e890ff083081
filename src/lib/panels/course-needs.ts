/** What the course map needs to know of a lesson. */
export interface CourseLesson {
  readonly id: string;
  readonly number?: number | undefined;
  readonly needs: readonly string[];
}

/** Lessons in the order they are taught in: by number, those without one last, by id. */
export const inOrder = <L extends CourseLesson>(lessons: readonly L[]): L[] =>
  [...lessons].sort((a, b) => (a.number ?? 1e3) - (b.number ?? 1e3) || (a.id < b.id ? -1 : 1));

/** The lessons that `id` builds on, near and far, among those there are; without itself. Ends on a circle, too. */
export function builtOn(lessons: readonly CourseLesson[], id: string): ReadonlySet<string> {
  const byId = new Map(lessons.map((lesson) => [lesson.id, lesson]));
  const found = new Set<string>();
  const look = (of: string): void => {
    for (const need of byId.get(of)?.needs ?? []) {
      if (need === id || found.has(need) || !byId.has(need)) continue;
      found.add(need);
      look(need);
    }
  };
  look(id);
  return found;
}

/** What a lesson needs itself: needs that another of its needs has as well are not told twice, those that are not there not at all. */
export function directNeeds(lessons: readonly CourseLesson[], lesson: CourseLesson): readonly string[] {
  const there = lesson.needs.filter((need) => lessons.some(({ id }) => id === need));
  return there.filter((need) => !there.some((other) => other !== need && builtOn(lessons, other).has(need)));
}
