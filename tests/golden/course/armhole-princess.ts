import { princess } from './support/princess.ts';

/** The corner is sharper here: a curve that reaches too far leaves it by too much and makes the two edges unlike. */
const TOO_LONG = ['princess/smooth', 'princess/seam', 'princess/seam'];

export const CASES = princess('right/armhole', 'right/shoulder', TOO_LONG);
