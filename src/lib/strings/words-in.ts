import { GLOSSARY } from './glossary.ts';

/** A word of the trade in a text: where it stands, how many characters it has, and its entry in the glossary. */
export interface TradeWord {
  readonly at: number;
  readonly length: number;
  readonly term: string;
}

/** What stands in a sentence otherwise than one or many of its word. An alternate pivot is not what the entry tells of. */
const OTHERWISE: Readonly<Record<string, string>> = {
  blending: 'blend(?:s|ed|ing)?',
  'dart cap': '(?:dart )?caps?',
  'dart intake': '(?:dart )?intake',
  'dart legs': '(?:dart )?legs?',
  'half scale': 'half[- ]scale',
  pivot: '(?<!alternate )pivot(?:s|ed|ing)?',
  truing: 'trued|truing|true the (?:legs|back|front)',
  'walking a seam': 'walk(?:s|ed|ing)?',
};

function pattern(term: string): string {
  return OTHERWISE[term] ?? `${term.replace(/ \(.*/, '').replace(/s$/, '')}(?:e?s)?`;
}

const TERMS = Object.keys(GLOSSARY).sort((a, b) => b.length - a.length);
const ANY = TERMS.map((term) => `(${pattern(term)})`).join('|');

/** The words of the trade that a text uses, in its order, each where it stands first; a longer one before one that is part of it. */
export function wordsIn(text: string): readonly TradeWord[] {
  const met = new Set<string>();
  const found: TradeWord[] = [];
  for (const one of text.matchAll(new RegExp(`\\b(?:${ANY})\\b`, 'gi'))) {
    const term = TERMS[one.slice(1).findIndex((group) => group !== undefined)];
    if (term === undefined || met.has(term)) continue;
    met.add(term);
    found.push({ at: one.index, length: one[0].length, term });
  }
  return found;
}
