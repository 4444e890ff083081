import type { BlockChoice } from '../recipe/types.ts';
import type { Lesson } from './types.ts';

/** The block that attempts of a lesson start with: its demo figure, in the lesson's form when it has one. */
export const blockOf = ({ figure, form }: Pick<Lesson, 'figure' | 'form'>): BlockChoice =>
  form === undefined ? { figure } : { figure, form };
