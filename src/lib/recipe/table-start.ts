import type { Block } from '../pattern/block.ts';
import type { BlockChoice, Work } from './types.ts';

/** The table with nothing done on it: the half front and the half back of a block. */
export const tableWith = (block: Block, { form }: BlockChoice): Work => ({
  block,
  opened: form === undefined ? undefined : block.front,
  pieces: [block.front, block.back],
  lines: [],
  turns: [],
  identified: {},
  readings: {},
  walked: [],
  overlaid: [],
  placed: {},
});

let draft: ((choice: BlockChoice) => Work) | undefined;
const given = new Map<string, Work>();

const keyOf = (choice: BlockChoice): string =>
  'figure' in choice ? `${choice.figure} ${choice.form ?? ''}` : '';

/** Says how a block is drafted; `start.ts` does so when it is there. */
export function draftWith(start: (choice: BlockChoice) => Work): void {
  draft = start;
}

/**
 * Hands in the drafted block of a demo figure, so that a page can begin on it without fetching what drafts: numbers come out of
 * JSON with the same bits. Blocks on own measures are not kept.
 */
export function haveBlock(choice: BlockChoice, block: Block): void {
  if ('figure' in choice) given.set(keyOf(choice), tableWith(block, choice));
}

/**
 * The table at the beginning of a recipe. Throws RangeError for a block that does not exist, and Error for one that was neither
 * handed in nor can be drafted, because `start.ts` was not fetched.
 */
export function tableFor(choice: BlockChoice): Work {
  const work = draft?.(choice) ?? given.get(keyOf(choice));
  if (work === undefined) throw new Error('the block was not handed in, and start.ts was not fetched');
  return work;
}
