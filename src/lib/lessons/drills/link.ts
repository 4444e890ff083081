import { BANDS, EXERCISES, type Drill } from './types.ts';

/** Seeds are whole numbers below this. */
export const SEEDS = 1_000_000;

const FABRICS = ['woven', 'knit'] as const;

/** The drill as the fragment of a link, without the `#`: `pivot.4711.woven.usual.2`. */
export const toFragment = ({ exercise, seed, fabric, band, hints }: Drill): string =>
  [exercise, seed, fabric, band, hints].join('.');

/** What a fragment should be and is not. */
export interface BadLink {
  readonly path: 'exercise' | 'seed' | 'fabric' | 'band' | 'hints' | 'link';
  readonly expected: string;
  readonly found: string;
}

const oneOf = <T extends string>(list: readonly T[], value: string): T | undefined =>
  list.find((one) => one === value);

const whole = (text: string, below: number): number | undefined =>
  /^\d{1,6}$/.test(text) && Number(text) < below ? Number(text) : undefined;

/** The drill of a fragment, with or without the `#`; or what is wrong with it: all or nothing. Never throws. */
export function fromFragment(text: string): { readonly ok: Drill } | { readonly problem: BadLink } {
  const parts = text.replace(/^#/, '').split('.');
  if (parts.length !== 5) {
    const found = `${parts.length} ${parts.length === 1 ? 'part' : 'parts'}`;
    return { problem: { path: 'link', expected: 'five parts with points between them', found } };
  }
  const [exercise, seed, fabric, band, hints] = parts as [string, string, string, string, string];
  const bad = (path: BadLink['path'], expected: string, found: string) => ({
    problem: { path, expected, found: found.slice(0, 40) },
  });
  const what = oneOf(EXERCISES, exercise);
  if (what === undefined) return bad('exercise', `one of ${EXERCISES.join(', ')}`, exercise);
  const number = whole(seed, SEEDS);
  if (number === undefined) return bad('seed', `a whole number below ${SEEDS}`, seed);
  const cloth = oneOf(FABRICS, fabric);
  if (cloth === undefined) return bad('fabric', `one of ${FABRICS.join(', ')}`, fabric);
  const width = oneOf(BANDS, band);
  if (width === undefined) return bad('band', `one of ${BANDS.join(', ')}`, band);
  const rungs = whole(hints, 4);
  if (rungs === undefined) return bad('hints', 'a whole number from 0 to 3', hints);
  return { ok: { exercise: what, seed: number, fabric: cloth, band: width, hints: rungs } };
}
