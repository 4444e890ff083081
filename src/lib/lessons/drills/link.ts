import {
  BANDS,
  EXERCISES,
  FIRST_EXERCISES,
  newest,
  SCALES,
  SECOND_DRAW,
  type Drill,
  type ExerciseId,
} from './types.ts';
import { stepCount } from './steps.ts';

/** Seeds are whole numbers below this. */
export const SEEDS = 1_000_000;

const FABRICS = ['woven', 'knit'] as const;
/** The kinds that numbered fragments know, by their version; one without a number is of the first. */
const KINDS: ReadonlyMap<string, readonly ExerciseId[]> = new Map([
  ['2', EXERCISES],
  ['3', SECOND_DRAW],
  ['4', EXERCISES],
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
  return !draw && scale === undefined && oneOf(FIRST_EXERCISES, exercise) !== undefined
    ? first
    : `${draw ? 3 : 2}.${first}.${scale ?? BY_SEED}`;
}

/** What a fragment should be and is not. */
export interface BadLink {
  readonly path: 'version' | 'exercise' | 'seed' | 'fabric' | 'band' | 'hints' | 'scale' | 'step' | 'link';
  readonly expected: string;
  readonly found: string;
}

const oneOf = <T extends string>(list: readonly T[], value: string): T | undefined =>
  list.find((one) => one === value);

const whole = (text: string, below: number): number | undefined =>
  /^\d{1,6}$/.test(text) && Number(text) < below ? Number(text) : undefined;

/** The parts of a fragment and the kinds that its version knows. */
interface Taken {
  readonly version: string;
  readonly parts: readonly string[];
  readonly kinds: readonly ExerciseId[];
}

/** How many parts each version has after its number, in words. */
const COUNTS = { '': 'five', '2': 'six', '3': 'six', '4': 'seven' } as const;
const NUMBERS = { five: 5, six: 6, seven: 7 } as const;

const bad = (path: BadLink['path'], expected: string, found: string) => ({
  problem: { path, expected, found: found.slice(0, 40) },
});

function taken(text: string): Taken | ReturnType<typeof bad> {
  const all = text.replace(/^#/, '').split('.');
  const [version = ''] = all;
  const numbered = /^\d+$/.test(version);
  const known = KINDS.get(version);
  if (numbered && !known) return bad('version', `version ${[...KINDS.keys()].join(', ')} or none`, version);
  const parts = numbered ? all.slice(1) : all;
  const wanted = COUNTS[numbered ? (version as keyof typeof COUNTS) : ''];
  if (parts.length === NUMBERS[wanted])
    return { version: numbered ? version : '', parts, kinds: known ?? FIRST_EXERCISES };
  const found = `${parts.length} ${parts.length === 1 ? 'part' : 'parts'}`;
  return bad('link', `${wanted} parts with points between them`, found);
}

/** The drill of a fragment, with or without the `#`; or what is wrong with it: all or nothing. Never throws. */
export function fromFragment(text: string): { readonly ok: Drill } | { readonly problem: BadLink } {
  const read = taken(text);
  if ('problem' in read) return read;
  const [exercise = '', seed = '', fabric = '', band = '', hints = '', scale, step = ''] = read.parts;
  const what = oneOf(read.kinds, exercise);
  if (what === undefined) return bad('exercise', `one of ${read.kinds.join(', ')}`, exercise);
  const number = whole(seed, SEEDS);
  if (number === undefined) return bad('seed', `a whole number below ${SEEDS}`, seed);
  const cloth = oneOf(FABRICS, fabric);
  if (cloth === undefined) return bad('fabric', `one of ${FABRICS.join(', ')}`, fabric);
  const width = oneOf(BANDS, band);
  if (width === undefined) return bad('band', `one of ${BANDS.join(', ')}`, band);
  const rungs = whole(hints, 4);
  if (rungs === undefined) return bad('hints', 'a whole number from 0 to 3', hints);
  const drill: Drill = {
    ...{ exercise: what, seed: number, fabric: cloth, band: width, hints: rungs },
    ...(read.version === '3' && { draw: 2 }),
  };
  const paper = scale === undefined || scale === BY_SEED ? undefined : oneOf(SCALES, scale);
  if (scale !== undefined && scale !== BY_SEED && paper === undefined)
    return bad('scale', `one of ${[...SCALES, BY_SEED].join(', ')}`, scale);
  const scaled = paper === undefined ? drill : { ...drill, scale: paper };
  if (read.version !== ONE_STEP) return { ok: scaled };
  const most = stepCount(what);
  const only = whole(step, most + 1);
  if (!only) return bad('step', `a whole number from 1 to ${most}`, step);
  return { ok: newest({ ...scaled, step: only }) };
}
