import fc from 'fast-check';
import { checkAttempt } from '../../src/lib/recipe/parse.ts';
import type { Attempt, Command } from '../../src/lib/recipe/types.ts';
import { real } from '../support/real.ts';
import { sampleAttempt } from './sample.ts';

const SAMPLES = [
  sampleAttempt('F2', 'knit'),
  sampleAttempt('F4', 'woven', { turn: 'rest' }),
  sampleAttempt('F1', 'woven', { separateFirst: true }),
];

/** Ways in which a list of commands comes out of order; each takes a number from 0 to 1 that says where. */
type Harm = (commands: readonly Command[], where: number, how: number) => readonly Command[];
const at = (commands: readonly Command[], where: number) =>
  Math.min(commands.length - 1, Math.floor(where * commands.length));
const HARMS: readonly Harm[] = [
  (c, w) => c.filter((_, i) => i !== at(c, w)),
  (c, w, h) => [...c.slice(0, at(c, h)), c[at(c, w)]!, ...c.slice(at(c, h))],
  (c, w, h) => c.map((one, i) => (i === at(c, w) ? ({ ...one, step: c[at(c, h)]!.step! } as Command) : one)),
  (c, w, h) => c.map((one, i) => (i === at(c, w) ? (scaled(one, h * 4 - 2) as Command) : one)),
  (c, w, h) => c.map((one, i) => (i === at(c, w) ? (scaled(one, h < 0.5 ? 0 : 1e3) as Command) : one)),
];

/** All numbers of a command times a factor. */
function scaled(value: unknown, factor: number): unknown {
  if (typeof value === 'number') return value * factor;
  if (Array.isArray(value)) return value.map((one) => scaled(one, factor));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, scaled(one, factor)]));
}

/** Attempts that can be read, with commands lost, doubled, out of order, in another step, or with absurd numbers. */
export const oddAttempts: fc.Arbitrary<Attempt> = fc
  .tuple(
    fc.constantFrom(...SAMPLES),
    fc.array(fc.tuple(fc.constantFrom(...HARMS), real(0, 1), real(0, 1)), { minLength: 1, maxLength: 6 }),
  )
  .map(([sample, harms]) => {
    const commands = harms.reduce<readonly Command[]>(
      (c, [how, w, h]) => (c.length > 0 ? how(c, w, h) : c),
      sample.commands,
    );
    return checkAttempt(JSON.parse(JSON.stringify({ ...sample, commands })) as unknown);
  })
  .filter((parsed) => 'ok' in parsed)
  .map((parsed) => (parsed as { ok: Attempt }).ok);

const changed = (change: (command: Command) => Command): Attempt => ({
  ...SAMPLES[0]!,
  commands: SAMPLES[0]!.commands.map(change),
});
const feet = (right: number, left: number) =>
  changed((c) => (c.do === 'connect' ? { ...c, at: c.dart === 'right' ? right : left } : c));
export const lineCalled = (id: string) => changed((c) => ('line' in c ? { ...c, line: id } : c));

/** Attempts at the edges of what can be done, by name. */
export const ODD: Readonly<Record<string, Attempt>> = {
  'both feet in one place': feet(0.5, 0.5),
  'feet all but in one place': feet(0.5, 0.5 + 1e-12),
  'feet a hair apart': feet(0.5, 0.5 + 1e-6),
  'feet crossed': feet(0.68, 0.39),
  'feet on the ends': feet(0, 1),
  'feet on the other ends': feet(1, 0),
  'feet all but on the ends': feet(1e-12, 1 - 1e-12),
  'notches on the feet': changed((c) => (c.do === 'notch' ? { ...c, at: 0.3880886413972975 } : c)),
  'notches on the end': changed((c) => (c.do === 'notch' ? { ...c, at: 1 } : c)),
  'a line called like a bank': lineCalled('my/a.x'),
  'a line called like an edge': lineCalled('right/shoulder'),
  'a line called like a piece': lineCalled('upper'),
  'turned by more than a turn': changed((c) => (c.do === 'turn' ? { ...c, by: { angle: 7 } } : c)),
  'turned about the end of a leg': changed((c) =>
    c.do === 'turn' ? { ...c, about: { landmark: 'right/dart-upper-end' } } : c,
  ),
  'all taken out': changed((c) => (c.do === 'take-out' ? { ...c, amount: 203 } : c)),
  'bridged from end to end': changed((c) => (c.do === 'bridge' ? { ...c, before: 140, after: 140 } : c)),
  'allowances wider than the pieces': changed((c) => (c.do === 'allow' ? { ...c, width: 150 } : c)),
};
