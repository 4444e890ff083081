import type { CourseCase } from './case.ts';
import { drawing, extending, moving, proving, type Wanted } from './support/moves.ts';

const WANTED: Wanted = {
  edge: 'right/shoulder',
  right: 0.5,
  alsoRight: 0.42,
  wrong: 0.15,
  otherEdge: 'right/side',
  sense: -1,
};

export const CASES: readonly CourseCase[] = [
  ...extending(),
  ...drawing(WANTED),
  ...moving(WANTED),
  ...proving(),
];
