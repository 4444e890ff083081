import {
  BANDS,
  EXERCISES,
  FIRST_EXERCISES,
  newest,
  SCALES,
  SECOND_DRAW,
  type Band,
  type Drill,
  type ExerciseId,
  type Scale,
} from './types.ts';
import type { Fabric } from '../../recipe/types.ts';
import { stepCount } from './steps.ts';

/** Seeds are whole numbers below this. */
export const SEEDS = 1_000_000;

const FABRICS = ['woven', 'knit'] as const;
/** The kinds that fragments of each version know, and how many parts these have after their number; the first version has none. */
const VERSIONS: ReadonlyMap<string, readonly [kinds: readonly ExerciseId[], parts: number]> = new Map([
  ['', [FIRST_EXERCISES, 5]],
  ['2', [EXERCISES, 6]],
  ['3', [SECOND_DRAW, 6]],
  ['4', [EXERCISES, 7]],
]);
/** The version of drills of one step. */
const ONE_STEP = '4';
/** In place of a scale: the seed says. */
const BY_SEED = 'any';

/**
 * The drill as the fragment of a link, without the `#`: `2.finish.4711.woven.usual.2.half`. What the first version could say is said
 * as it was said then, `pivot.4711.woven.usual.2`, so that it can be read by whatever version of the app opens it. The third version is a second draw,
 * the fourth a drill of one step, with its number at the end: `4.line.4711.woven.usual.1.half.4`.
 */
export function toFragment({ exercise, seed, fabric, band, hints, scale, draw, step }: Drill): string {
  const first = [exercise, seed, fabric, band, hints].join('.');
  if (step !== undefined) return `${ONE_STEP}.${first}.${scale ?? BY_SEED}.${step}`;
  return !draw && scale === undefined && (FIRST_EXERCISES as readonly string[]).includes(exercise)
    ? first
    : `${draw ? 3 : 2}.${first}.${scale ?? BY_SEED}`;
}

/** What a fragment should be and is not. */
export interface BadLink {
  readonly path: 'version' | 'exercise' | 'seed' | 'fabric' | 'band' | 'hints' | 'scale' | 'step' | 'link';
  readonly expected: string;
  readonly found: string;
}

/** What a part of a fragment may be: one of some words, or a whole number from and to. */
type Allowed = readonly string[] | readonly [from: number, to: number];

const words = (allowed: Allowed): allowed is readonly string[] => typeof allowed[0] === 'string';

const isAllowed = (value: string, allowed: Allowed): boolean =>
  words(allowed)
    ? allowed.includes(value)
    : /^\d{1,6}$/.test(value) && Number(value) >= allowed[0] && Number(value) <= allowed[1];

/** The parts of a fragment that is right. */
type Said = readonly [ExerciseId, seed: string, Fabric, Band, hints: string, Scale, step?: string];

const bad = (path: BadLink['path'], expected: string, found: string) => ({
  problem: { path, expected, found: found.slice(0, 40) },
});

/** What the parts of a fragment say, in their order. Those before are right when the last one is asked for. */
const FIELDS: readonly [BadLink['path'], (kinds: readonly ExerciseId[], exercise: ExerciseId) => Allowed][] =
  [
    ['exercise', (kinds) => kinds],
    ['seed', () => [0, SEEDS - 1]],
    ['fabric', () => FABRICS],
    ['band', () => BANDS],
    ['hints', () => [0, 3]],
    ['scale', () => [...SCALES, BY_SEED]],
    ['step', (_, exercise) => [1, stepCount(exercise)]],
  ];

/** The drill of a fragment, with or without the `#`; or what is wrong with it: all or nothing. Never throws. */
export function fromFragment(text: string): { readonly ok: Drill } | { readonly problem: BadLink } {
  const all = text.replace(/^#/, '').split('.');
  const [first = ''] = all;
  const version = /^\d+$/.test(first) ? first : '';
  const known = VERSIONS.get(version);
  if (!known) return bad('version', `version ${[...VERSIONS.keys()].slice(1).join(', ')} or none`, first);
  const [kinds, count] = known;
  const parts = version ? all.slice(1) : all;
  if (parts.length !== count)
    return bad('link', `${count} parts with points between them`, `${parts.length}`);
  for (const [i, value] of parts.entries()) {
    const [path, allowedIn] = FIELDS[i]!;
    const allowed = allowedIn(kinds, parts[0] as ExerciseId);
    if (isAllowed(value, allowed)) continue;
    const said = words(allowed) ? `one of ${allowed.join(', ')}` : `a whole number, ${allowed.join(' to ')}`;
    return bad(path, said, value);
  }
  const [exercise, seed, fabric, band, hints, scale, step] = parts as unknown as Said;
  const drill: Drill = {
    ...{ exercise, seed: Number(seed), fabric, band, hints: Number(hints) },
    ...(SCALES.includes(scale) && { scale }),
    ...(step && { step: Number(step) }),
  };
  return { ok: version > '2' ? newest(drill) : drill };
}
