import type { CheckSpec } from '../grading/types.ts';

const cloths = ({ names }: CheckSpec): readonly string[] => [names?.['fabrics'] ?? []].flat();
/** A stable woven is trimmed; a knit is trimmed only where it need not be. */
const inWoven = (spec: CheckSpec): true | undefined => cloths(spec).includes('woven') || undefined;
const inKnit = (spec: CheckSpec): true | undefined => cloths(spec).includes('knit') || undefined;

/** What a check must have been told before it looks for a code; a check looks for all others whenever it is asked. */
const ASKED: Readonly<Record<string, (spec: CheckSpec) => unknown>> = {
  'dart-finished/legs': ({ tolerances }) => tolerances?.['legs'],
  'dart-finished/cap': ({ names }) => names?.['fold'],
  'dart-finished/graduated': ({ numbers }) => numbers?.['step'],
  'slashes-laid/parallel': ({ tolerances }) => tolerances?.['parallel'],
  'slashes-laid/pivot': ({ numbers }) => numbers?.['near'],
  'fullness/tucks': ({ names }) => (String(names?.['as']) === 'tucks' ? true : undefined),
  'fullness/limit': ({ numbers }) => numbers?.['limit-woven'] ?? numbers?.['limit-knit'],
  'leftover/copy': (spec) => cloths(spec).length > 1 || undefined,
  'leftover/end': inWoven,
  'leftover/amount': inWoven,
  'leftover/notches': inWoven,
  'leftover/back-trued': inWoven,
  'sliver/area': inWoven,
  'leftover/trim-not-needed': inKnit,
  'princess/smooth': ({ names }) => names?.['smooth'],
  'princess/reach': ({ numbers }) => numbers?.['least-reach'],
  // Halves that were trued each by itself have no fold.
  'labels/on-fold': ({ numbers }) => numbers?.['backCutAtSeam'],
  'line-ends/start-place': ({ numbers }) => numbers?.['start-at'],
  'line-ends/end-place': ({ numbers }) => numbers?.['end-at'],
};

/** Checks that look for just the things that they are told, each by its name in the code. */
const NAMED = ['landmarks-found', 'readings'];
const isNamed = ({ check, names }: CheckSpec, code: string): boolean =>
  !NAMED.includes(check) || [names?.['what'] ?? []].flat().includes(code.slice(check.length + 1));

/** Whether a check with these data looks for what the code names: it can find it wrong. */
export const canFind = (spec: CheckSpec, code: string): boolean =>
  code.startsWith(`${spec.check}/`) &&
  isNamed(spec, code) &&
  (!Object.hasOwn(ASKED, code) || ASKED[code]!(spec) !== undefined);
