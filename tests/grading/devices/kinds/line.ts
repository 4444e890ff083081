import { chainEnd, chainLength, pointAtLength } from '../../../../src/lib/geometry/chain.ts';
import { nearestOnChain } from '../../../../src/lib/geometry/nearest.ts';
import { add, distance, lerp, scale, sub, unit } from '../../../../src/lib/geometry/point.ts';
import type { Chain, Point } from '../../../../src/lib/geometry/types.ts';
import { tightest } from '../../../../src/lib/grading/curvature.ts';
import { lineOf } from '../../../../src/lib/machines/scene.ts';
import type { Work } from '../../../../src/lib/recipe/types.ts';
import { landmark, sampleAttempt } from '../../../recipe/sample.ts';
import { PATIENCE } from '../noise.ts';
import type { Person } from '../person.ts';
import { applied, kind, middle } from './kind.ts';

const OUT = { right: { x: 0.94, y: -0.34 }, left: { x: -0.2, y: 0.98 } } as const;
const passing = (work: Work, side: 'right' | 'left'): number =>
  nearestOnChain(lineOf(work)!.chain, landmark(work, `${side}/bust-point`)).distance;

export const byPoints = kind(
  'style line',
  ['slanted-seam', 'style-line'],
  { content: 1.5 },
  () => (person, mind) => {
    person.take('draw-line');
    const { work } = person.task;
    const [b1, b2] = [landmark(work, 'right/bust-point'), landmark(work, 'left/bust-point')];
    const aims = { right: mind.normal(4.5, 17.5), left: mind.normal(4.5, 17.5) };
    person.bring('start:right/shoulder', { to: middle(work, 'left/side-lower') }, 'point:1');
    if (!lineOf(person.work)) return;
    // An end that came to lie beside the edge is seen, and put on it.
    ['right/shoulder', 'left/side-lower'].forEach((edge, i) => {
      if (lineOf(person.work)!.ends[i] === undefined) person.bring(`point:${i}`, { to: middle(work, edge) });
    });
    const around = (p: Point) => mind.around(p, 2);
    person.bring('add:0', { to: around(add(b1, scale(OUT.right, aims.right))) }, 'point:1');
    person.bring('add:1', { to: around(add(lerp(b1, b2, 0.5), { x: -8, y: 8 })) }, 'point:2');
    person.bring('add:2', { to: around(add(b2, scale(OUT.left, aims.left))) }, 'point:3');
    for (const [side, id] of [
      ['right', 'point:1'],
      ['left', 'point:3'],
    ] as const)
      for (let tries = 0; tries < PATIENCE; tries++) {
        const off = aims[side] - person.reads(passing(person.work, side));
        const now = person.target(id);
        if (!now || Math.abs(off) <= person.task.content) break;
        person.bring(id, { to: add(now.point, scale(OUT[side], off)), read: true });
      }
  },
);

/** A free line is begun and ended beyond the edge, so far as it looks to be enough: mm of the screen. */
const BEYOND = 2.5;

/** A line that somewhere bends more tightly than this is seen to have a hook or a kink, and is drawn anew, mm. */
const HOOK = 20;

const lines = new Map<string, Chain>();
/** The line that passes the bust points at so many mm, to half a millimetre. */
function meantLine(work: Work, ...passes: readonly [number, number]): Chain {
  const [d1, d2] = [Math.round(2 * passes[0]) / 2, Math.round(2 * passes[1]) / 2];
  const key = `${d1} ${d2}`;
  const known = lines.get(key);
  if (known) return known;
  const command = sampleAttempt('F2', 'knit', { d1, d2, upTo: 'style-line' }).commands.at(-1)!;
  const { chain } = lineOf(applied(work, command))!;
  lines.set(key, chain);
  return chain;
}

export const inOneGo = kind(
  'free stroke',
  ['slanted-seam', 'style-line'],
  { content: 4 },
  () => (person, mind) => {
    person.take('draw-curve');
    const { work } = person.task;
    const [d1, d2] = [mind.normal(4.5, 17.5), mind.normal(4.5, 17.5)].map((d) => Math.max(3, d));
    const chain = meantLine(work, d1!, d2!);
    const whole = chainLength(chain);
    const past = BEYOND * (person.tip.device.perMm / person.k);
    const ends = [pointAtLength(chain, 0), pointAtLength(chain, whole)] as const;
    const [a, b] = [
      unit(sub(ends[0], pointAtLength(chain, 5))),
      unit(sub(ends[1], pointAtLength(chain, whole - 5))),
    ];
    const path = (part: number): Point => {
      const mm = part * (whole + 2 * past) - past;
      if (mm < 0) return add(ends[0], scale(a, -mm));
      return mm > whole ? add(ends[1], scale(b, mm - whole)) : pointAtLength(chain, mm);
    };
    for (let tries = 0; tries < PATIENCE; tries++) {
      person.draw(path, 'front');
      const drawn = lineOf(person.work);
      if (drawn && (drawn.kinks ?? 0) === 0 && tightest(drawn.chain).radius > HOOK) break;
    }
    mended(person, chain);
  },
);

/** Looks at a line drawn in one go, and pulls those of its points that lie off what was meant. */
function mended(person: Person, meant: Chain): void {
  person.take('draw-line');
  const last = (lineOf(person.work)?.points.length ?? 0) - 1;
  for (let i = 0; i <= last; i++) {
    const now = person.target(`point:${i}`);
    if (!now) return;
    const to =
      i === 0
        ? pointAtLength(meant, 0)
        : i === last
          ? chainEnd(meant)
          : nearestOnChain(meant, now.point).point;
    if (Math.abs(person.reads(distance(now.point, to))) > person.task.content)
      person.bring(now.id, { to, read: true });
  }
}
