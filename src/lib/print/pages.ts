import { stack, type Block } from './block.ts';
import type { Size } from './pack.ts';

/** A block that may not be parted from the one after it, as a heading from its text. */
export interface Flowing extends Block {
  readonly withNext?: boolean;
  /** Room left above it where it is not the first of a page, mm. */
  readonly above: number;
}

/**
 * Blocks in their order under each other on as few pages as that takes; what belongs with its next goes along to the next page. A block
 * that is higher than a page has a page to itself.
 */
export function onPages(blocks: readonly Flowing[], page: Size): readonly Block[] {
  const pages: Flowing[][] = [];
  let room = 0;
  for (let i = 0; i < blocks.length;) {
    let end = i + 1;
    while (blocks[end - 1]!.withNext === true && end < blocks.length) end += 1;
    const run = blocks.slice(i, end);
    const height = run.reduce((sum, { above, height }) => sum + above + height, 0);
    const open = pages.at(-1);
    if (open && height <= room) {
      open.push(...run);
      room -= height;
    } else {
      pages.push(run);
      room = page.height - (height - run[0]!.above);
    }
    i = end;
  }
  return pages.map((own) =>
    stack(
      own.map((block, i) => (i === 0 ? block : under(block))),
      0,
    ),
  );
}

/** The block with its room above. */
const under = ({ above, width, height, draw }: Flowing): Block => ({
  width,
  height: above + height,
  draw: (x, y) => draw(x, y + above),
});
