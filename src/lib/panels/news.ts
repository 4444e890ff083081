import type { Finding, Mark } from '../grading/types.ts';

/** Notes that say the same each time: that a turned part has lost its grain. */
const SAME: readonly string[] = ['dart-moved/grain', 'dart-closed/grain'];
const KEY = 'pin-and-pivot:told:';
/** Where the browser keeps nothing, it lasts as long as the page. */
const page = new Map<string, string>();

/** Whether this note was told in this tab at another step, lesson or drill: then it is no news any more. Where it was told first it stays. */
export function isOld({ code, state }: Finding, { step }: Mark): boolean {
  if (state !== 'note' || !SAME.includes(code)) return false;
  const here = `${location.pathname}${location.hash} ${step}`;
  const key = KEY + code;
  try {
    const first = sessionStorage.getItem(key);
    if (first === null) sessionStorage.setItem(key, here);
    return first !== null && first !== here;
  } catch {
    const first = page.get(key) ?? here;
    page.set(key, first);
    return first !== here;
  }
}
