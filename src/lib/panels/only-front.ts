import type { LessonToWork } from '../lessons/types.ts';

/** On the half front of a block form the back only lies by, unless seams are sewn to it or it is labelled. */
export const onlyFront = ({ form, steps }: LessonToWork): boolean =>
  form !== undefined &&
  !steps.some(({ tools }) => tools.some((tool) => ['walk', 'true', 'allow', 'label'].includes(tool)));
