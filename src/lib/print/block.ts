import type { Size } from './pack.ts';
import { textAt, textWidth } from './svg.ts';

/** Something that takes an upright box on the sheet, mm on paper; `draw` puts it with its top left corner at x, y. */
export interface Block extends Size {
  readonly draw: (x: number, y: number) => string;
}

const LEADING = 1.4;

/** Lines of text under each other, `size` mm high; `middle` centres them in the block's width. */
export function textBlock(lines: readonly string[], size: number, middle = false): Block {
  const width = Math.max(0, ...lines.map((line) => textWidth(line, size)));
  const leading = LEADING * size;
  return {
    width,
    height: lines.length * leading,
    draw: (x, y) =>
      lines
        .map((line, i) =>
          textAt(middle ? x + width / 2 : x, y + size + i * leading, size, line, middle ? 'middle' : 'start'),
        )
        .join(''),
  };
}

/** Blocks under each other, `gap` mm apart, at the left. */
export function stack(blocks: readonly Block[], gap: number): Block {
  return {
    width: Math.max(0, ...blocks.map((block) => block.width)),
    height: blocks.reduce((sum, block) => sum + block.height, 0) + gap * Math.max(0, blocks.length - 1),
    draw: (x, y) => {
      let top = y;
      return blocks
        .map((block) => {
          const drawn = block.draw(x, top);
          top += block.height + gap;
          return drawn;
        })
        .join('');
    },
  };
}

/** Blocks beside each other, `gap` mm apart, level at the top. */
export function besides(blocks: readonly Block[], gap: number): Block {
  return {
    width: blocks.reduce((sum, block) => sum + block.width, 0) + gap * Math.max(0, blocks.length - 1),
    height: Math.max(0, ...blocks.map((block) => block.height)),
    draw: (x, y) => {
      let left = x;
      return blocks
        .map((block) => {
          const drawn = block.draw(left, y);
          left += block.width + gap;
          return drawn;
        })
        .join('');
    },
  };
}
