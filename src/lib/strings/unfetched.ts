/** Said when the next step cannot be gone to, because what it needs did not come. */
export const UNFETCHED = 'The tools of the next step could not be fetched. Your work is kept.';
