/** What the overlay shows beside the block: paper that was added, and paper that was taken off. */
export const OVERLAY = { added: 'added', taken: 'taken off' } as const;
