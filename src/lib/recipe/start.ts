import { draftBlock } from '../pattern/draft.ts';
import { FIGURES } from '../pattern/figures.ts';
import type { Measures } from '../pattern/block.ts';
import { draftWith, tableWith } from './table-start.ts';
import type { BlockChoice, Work } from './types.ts';

/** The measurements of a block choice, mm; undefined for a figure that does not exist. */
export function measuresOf(block: BlockChoice): Measures | undefined {
  if ('measures' in block) return block.measures;
  return Object.hasOwn(FIGURES, block.figure) ? FIGURES[block.figure as keyof typeof FIGURES] : undefined;
}

/** The table at the beginning: the half front and the half back of the block in its form. Throws RangeError for an unknown figure. */
export function startWork(block: BlockChoice): Work {
  const measures = measuresOf(block);
  if (measures === undefined) throw new RangeError('there is no such figure');
  return tableWith(draftBlock(measures, block.form), block);
}

// Whoever has this file can begin on any block.
draftWith(startWork);
