import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonFault } from '../../src/lib/recipe/json-fault.ts';

const parses = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

// Outside reference: the engine's own JSON.parse says which texts are JSON.
describe('the place where a text stops being JSON', () => {
  it('is line and column of the first character that does not fit', () => {
    expect(jsonFault('')).toMatchObject({ line: 1, column: 1, found: 'the end of the text' });
    expect(jsonFault('{\n  "a": 1,\n}')).toMatchObject({ line: 3, column: 1, expected: 'a name in quotes' });
    expect(jsonFault('[1 2]')).toMatchObject({ line: 1, column: 4, expected: '"," or "]"' });
    expect(jsonFault('{"a" 1}')).toMatchObject({ line: 1, column: 6, expected: '":"' });
    expect(jsonFault('"abc')).toMatchObject({ column: 5, found: 'the end of the text' });
  });

  it('is none for every JSON text, and one for every text that JSON.parse refuses', () => {
    fc.assert(fc.property(fc.json(), (text) => jsonFault(text) === undefined));
    const damaged = fc.tuple(
      fc.json(),
      fc.nat(),
      fc.constantFrom('', ',', '}', ']', '"', ':', '\\', '0', 'x', '\n'),
    );
    fc.assert(
      fc.property(damaged, ([text, n, put]) => {
        const at = n % (text.length + 1);
        const broken = text.slice(0, at) + put + text.slice(at + 1);
        expect(jsonFault(broken) === undefined).toBe(parses(broken));
      }),
      { numRuns: 1000 },
    );
  });

  it('is found in deep nesting and in long texts without overflow', () => {
    expect(jsonFault('['.repeat(1_000_000))).toMatchObject({ column: 1_000_001 });
    expect(jsonFault('"' + 'a'.repeat(3_000_000))).toMatchObject({ column: 3_000_002 });
  });
});
