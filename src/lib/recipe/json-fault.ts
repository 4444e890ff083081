/** Where a text stops being JSON. Lines and columns count from 1, in UTF-16 units as editors do. */
export interface JsonFault {
  readonly line: number;
  readonly column: number;
  readonly expected: string;
  readonly found: string;
}

const NUMBER = /-?(0|[1-9][0-9]*)(\.[0-9]+)?([eE][+-]?[0-9]+)?/y;
const PLAIN = /[^"\\\u0000-\u001f]+/y; // eslint-disable-line no-control-regex
const ESCAPE = /\\(["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const WORD = /true|false|null/y;
const SPACE = /[ \t\r\n]*/y;

/**
 * The first fault of a text that JSON.parse refused, told alike in every engine (their own messages differ). Works with a
 * stack of its own, so deep nesting cannot overflow. undefined when it finds none.
 */
export function jsonFault(text: string): JsonFault | undefined {
  let at = 0;
  const skip = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    const match = pattern.exec(text);
    if (match === null) return false;
    at += match[0].length;
    return true;
  };
  const fault = (expected: string): JsonFault => {
    const before = text.slice(0, at).split('\n');
    const found = at < text.length ? JSON.stringify(text.slice(at, at + 12)) : 'the end of the text';
    return { line: before.length, column: before[before.length - 1]!.length + 1, expected, found };
  };
  const string = (): boolean | JsonFault => {
    if (text[at] !== '"') return false;
    at++;
    while (skip(PLAIN) || skip(ESCAPE));
    if (text[at] !== '"') return fault('the rest of a text in quotes');
    at++;
    return true;
  };

  const open: ('{' | '[')[] = [];
  for (;;) {
    skip(SPACE);
    let closed = false;
    const c = text[at];
    if (c === '{' || c === '[') {
      at++;
      open.push(c);
      skip(SPACE);
      if (text[at] === (c === '{' ? '}' : ']')) closed = true;
      else if (c === '[') continue;
    } else {
      const text = string();
      if (typeof text === 'object') return text;
      if (!text && !skip(NUMBER) && !skip(WORD)) return fault('a value');
    }
    // After a value (or after an opening brace): close what closes, then go on to the next value or name.
    let wantsName = !closed && c === '{';
    while (!wantsName) {
      if (closed) {
        at++;
        open.pop();
        closed = false;
      }
      skip(SPACE);
      const level = open[open.length - 1];
      if (level === undefined) return at < text.length ? fault('the end of the text') : undefined;
      if (text[at] === (level === '{' ? '}' : ']')) closed = true;
      else if (text[at] === ',') {
        at++;
        if (level === '[') break;
        wantsName = true;
      } else return fault(level === '{' ? '"," or "}"' : '"," or "]"');
    }
    if (wantsName) {
      skip(SPACE);
      const name = string();
      if (typeof name === 'object') return name;
      if (!name) return fault('a name in quotes');
      skip(SPACE);
      if (text[at] !== ':') return fault('":"');
      at++;
    }
  }
}
