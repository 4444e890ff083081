import type { ToolSpec } from '../tool-spec.ts';

/** Copies the pieces, to treat them for the other fabric. */
export const copy: ToolSpec = {
  id: 'copy',
  // With one copy there is a set for each of the two.
  acts: ({ work }) =>
    work.pieces.some((piece) => piece.id.includes('@'))
      ? []
      : (['woven', 'knit'] as const).map((as) => ({
          id: `copy:${as}`,
          about: as,
          command: { do: 'copy', as },
        })),
  targets: () => [],
  propose: () => undefined,
};
