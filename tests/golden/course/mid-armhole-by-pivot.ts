import type { CourseCase } from './case.ts';
import { extending, pivoting, proving, type Wanted } from './support/moves.ts';

const WANTED: Wanted = {
  edge: 'right/armhole',
  right: 0.5,
  alsoRight: 0.45,
  wrong: 0.2,
  otherEdge: 'right/shoulder',
  sense: -1,
};

export const CASES: readonly CourseCase[] = [...extending(), ...pivoting(WANTED), ...proving()];
