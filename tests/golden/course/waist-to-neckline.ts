import type { CourseCase } from './case.ts';
import { drawing, extending, moving, proving, type Wanted } from './support/moves.ts';

const WANTED: Wanted = {
  edge: 'right/neckline',
  right: 0.5,
  alsoRight: 0.38,
  wrong: 0.1,
  otherEdge: 'right/shoulder',
  sense: -1,
};

export const CASES: readonly CourseCase[] = [
  ...extending(),
  ...drawing(WANTED),
  ...moving(WANTED),
  ...proving(),
];
