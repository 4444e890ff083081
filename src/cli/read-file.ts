import { readFileSync, statSync } from 'node:fs';
import { LIMITS } from '../lib/recipe/shapes.ts';

/** No text of `LIMITS.text` characters is longer in UTF-8, bytes. */
const LONGEST = 4 * LIMITS.text;

/** The text of a file, or why it cannot be read, in one line. Never throws. */
export function readText(path: string): { readonly text: string } | { readonly unreadable: string } {
  let bytes: Uint8Array;
  try {
    const about = statSync(path);
    if (about.isCharacterDevice() || about.isBlockDevice()) return { unreadable: 'it is a device' };
    if (about.size > LONGEST) return { unreadable: `it is longer than ${LONGEST} bytes` };
    bytes = readFileSync(path);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT') return { unreadable: 'there is no such file' };
    if (code === 'EISDIR') return { unreadable: 'it is a folder' };
    if (code === 'EACCES') return { unreadable: 'it may not be read' };
    return { unreadable: code ?? 'it cannot be read' };
  }
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return { unreadable: 'it is not text in UTF-8' };
  }
}
