import type { Piece } from '../../pattern/types.ts';
import type { BlockForm } from '../../pattern/block.ts';
import { startWork } from '../../recipe/start.ts';
import { beginningOf, drawOn } from './begin.ts';
import { KITS } from './kits/index.ts';
import type { Drill, Variant } from './types.ts';

/** The front of a demo figure in a form, as it lies on the table. */
export const paperOf = (figure: string, form: BlockForm): Piece => startWork({ figure, form }).opened!;

/** What a drill asks for, worked out from it alone: the same drill is the same exercise on every machine. */
export function variantOf(drill: Drill): Variant {
  const begun = beginningOf(drill);
  return KITS[drill.exercise].of(drawOn(begun, paperOf(begun.figure, begun.form)));
}
