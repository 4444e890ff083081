import type { CourseCase } from './case.ts';
import { extending, pivoting, proving, type Wanted } from './support/moves.ts';

const WANTED: Wanted = {
  edge: 'right/side',
  right: 0.25,
  alsoRight: 0.33,
  wrong: 0.7,
  otherEdge: 'right/armhole',
  sense: -1,
};

export const CASES: readonly CourseCase[] = [...extending(), ...pivoting(WANTED), ...proving()];
