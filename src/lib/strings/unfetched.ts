/** Said when the next step cannot be gone to, because what it needs did not come. */
export const UNFETCHED = 'The tools of the next step could not be fetched. Your work is kept.';

/** Said when nothing can be marked, because what marks did not come. */
export const MARK_UNFETCHED = 'What marks your work could not be fetched. Your work is kept.';

/** Said when the solution cannot be shown, because what shows it did not come. */
export const SOLUTION_UNFETCHED = 'The solution could not be fetched. Your work is kept.';

/** Said when a drill cannot be begun, because what it is made of did not come. */
export const DRILL_UNFETCHED = 'This drill could not be fetched. Look whether you are connected.';

/** Said while the table, on which all else is done, is fetched. */
export const SETTING = 'The table is being set.';

/** Said in the place of a part of the page that did not come. */
export const PART_UNFETCHED = 'This part could not be fetched. Look whether you are connected.';

/** Said when a file cannot be opened, or what was chosen from the menu cannot be done, because what it needs did not come. */
export const CHOSEN_UNFETCHED = 'What this needs could not be fetched. Your work is kept.';
