import type { BaseIssue } from 'valibot';

/** What is wrong with a file: where, what should be there, what is. For people; never run as markup. */
export interface Problem {
  /** e.g. 'commands[3].points[0].at'; '' for the file itself. */
  readonly path: string;
  readonly expected: string;
  readonly found: string;
}

/** A value from a file, short enough for one line. */
export function shortly(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number' && !Number.isFinite(value)) return String(value);
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) {
    const keys = Object.keys(value);
    return `an object with ${keys.length === 0 ? 'no keys' : clip(keys.slice(0, 6).join(', '))}`;
  }
  return clip(JSON.stringify(typeof value === 'string' ? value.slice(0, 80) : value));
}

const clip = (text: string): string => (text.length > 60 ? `${text.slice(0, 57)}...` : text);

/** 'commands', 3, 'at' → 'commands[3].at' */
export function pathOf(keys: readonly unknown[]): string {
  let path = '';
  for (const key of keys)
    path += typeof key === 'number' ? `[${key}]` : (path === '' ? '' : '.') + clip(String(key));
  return path;
}

/** What valibot found, in the words of a Problem. */
export function problemOf(issue: BaseIssue<unknown>): Problem {
  const path = pathOf((issue.path ?? []).map((item) => item.key));
  if (issue.type === 'never') return { path, expected: issue.message, found: shortly(issue.input) };
  if (issue.type === 'strict_object' && issue.expected === 'never')
    return { path, expected: 'no such key', found: shortly(lastValue(issue)) };
  if (issue.received === 'undefined') return { path, expected: wanted(issue), found: 'nothing' };
  if (issue.type === 'max_length' || issue.type === 'min_length')
    return { path, expected: `${issue.expected} entries`, found: `${issue.received} entries` };
  return { path, expected: wanted(issue), found: shortly(issue.input) };
}

function lastValue(issue: BaseIssue<unknown>): unknown {
  const path = issue.path;
  return path === undefined ? issue.input : path[path.length - 1]!.value;
}

function wanted(issue: BaseIssue<unknown>): string {
  // What these expect is a pattern or a number; a message of our own says it in words.
  const worded = issue.type === 'regex' || issue.type === 'integer';
  if (worded && !issue.message.startsWith('Invalid')) return issue.message;
  if (issue.type === 'strict_object' && issue.received === 'undefined') return `the key ${issue.expected}`;
  return issue.expected ?? issue.message;
}
