/** Offers `text` as a file to save. */
export function saveFile(name: string, text: string, type = 'application/json'): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // Some browsers read the address only after this turn of the event loop.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** The largest file that is read, bytes: a whole attempt is about 20 kB. */
export const LARGEST_FILE = 2_000_000;

/** Text of a file the learner picked; undefined when it is larger than `LARGEST_FILE` or cannot be read. */
export async function readPicked(file: File): Promise<string | undefined> {
  if (file.size > LARGEST_FILE) return undefined;
  return file.text().catch(() => undefined);
}
