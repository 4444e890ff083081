/** Said when the next step cannot be gone to, because what it needs did not come. */
export const UNFETCHED = 'The tools of the next step could not be fetched. Your work is kept.';

/** Said when a drill cannot be begun, because what it is made of did not come. */
export const DRILL_UNFETCHED = 'This drill could not be fetched. Look whether you are connected.';
