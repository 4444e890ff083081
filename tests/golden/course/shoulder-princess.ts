import { princess } from './support/princess.ts';

export const CASES = princess('right/shoulder', 'right/armhole', ['princess/smooth']);
