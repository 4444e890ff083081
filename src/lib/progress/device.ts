const KEY = 'pin-and-pivot:device';
const ID = /^[A-Za-z0-9-]{8,64}$/;
let own: string | undefined;

/** A name by chance for this device, the same on each visit where the browser keeps it. It says nothing of the device or the person. */
export function deviceId(): string {
  if (own !== undefined) return own;
  own = crypto.randomUUID();
  try {
    const kept = localStorage.getItem(KEY);
    if (kept !== null && ID.test(kept)) own = kept;
    else localStorage.setItem(KEY, own);
  } catch {
    // Without storage the name lasts as long as the page, as what is recorded does.
  }
  return own;
}
