import type { ToolSpec } from '../tool-spec.ts';

/** Piece name, number to cut, right side up: typed, so nothing to take hold of. */
export const label: ToolSpec = { id: 'label', targets: () => [], propose: () => undefined };
