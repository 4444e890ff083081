import { describe, expect, it } from 'vitest';
import { joined } from '../../src/lib/print/wrap.ts';

describe('joined', () => {
  it('makes one line of a paragraph and of a list item, and keeps empty lines', () => {
    const text = [
      'The first line',
      'goes on.',
      '',
      'Draw:',
      '- one leg,',
      '  as long',
      '- the other',
      'Then stop.',
    ];
    expect(joined(text)).toEqual([
      'The first line goes on.',
      '',
      'Draw:',
      '- one leg, as long',
      '- the other',
      'Then stop.',
    ]);
  });
});
