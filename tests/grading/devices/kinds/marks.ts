import { pointAtLength } from '../../../../src/lib/geometry/chain.ts';
import { applyTo, rotationByAngle } from '../../../../src/lib/geometry/isometry.ts';
import { add, distance, lerp, scale, sub, unit } from '../../../../src/lib/geometry/point.ts';
import { angleBetween } from '../../../../src/lib/geometry/trig.ts';
import type { Point } from '../../../../src/lib/geometry/types.ts';
import { findEdge } from '../../../../src/lib/pattern/outline.ts';
import type { Person } from '../person.ts';
import { WRONG, along, applied, feet, kind } from './kind.ts';

export const pointing = kind(
  'point out',
  ['reading-the-block', 'find'],
  { content: 2 },
  () => (person, mind) => {
    person.take('identify');
    const wanted = [
      ['bust-point', 'landmark:right/bust-point'],
      ['dart-upper', 'edge:right/dart-upper'],
      ['dart-lower', 'edge:right/dart-lower'],
      ['centre-front', 'edge:centre-front'],
      ['neck-point', 'landmark:right/neck-point'],
    ] as const;
    for (const [what, id] of wanted) {
      person.option('what', what);
      person.tap(mind.next() < WRONG / 3 ? 'edge:right/shoulder' : id);
    }
  },
);

const NOTCHES = [
  ['right', -1],
  ['right', 1],
  ['left', -1],
  ['left', 1],
] as const;
/** A notch to either side of each bust point, at about its distance, put there by `put`. */
const notching = (name: string, put: (person: Person, to: Point, side: string, id: string) => void) =>
  kind(name, ['slanted-seam', 'notches'], { field: 150, content: 1 }, () => (person, mind) => {
    person.take('notch');
    NOTCHES.forEach(([side, way], i) => {
      const to = along(person.work, feet(person.work, side) + way * mind.normal(5.5, 40));
      put(person, to, side, `notch:n${i + 1}`);
    });
  });
export const slidNotches = notching('notch, slid', (person, to, side, id) =>
  person.bring(`new:${side}`, { to, read: true }, id),
);
export const pressedNotches = notching('notch, pressed', (person, to, _side, id) => {
  person.tapAt(to, 'front', () => person.target(id) !== undefined);
  const now = person.target(id);
  if (now && distance(now.point, to) > person.task.content) person.bring(id, { to, read: true });
});

export const seamNotching = kind(
  'seam notches',
  ['shoulder-princess', 'notches'],
  { field: 200, content: 0.7 },
  (right) => (person, mind) => {
    person.take('notch-seam');
    const piece = 'front-side';
    // The place of the bust point is where the plus sign lies: it is marked last, so that none covers the sign.
    const last = [...right.slice(1), ...right.slice(0, 1)];
    last.forEach((command, i) => {
      if (command.do !== 'notch-seam') return;
      const id = `n${i + 1}`;
      const off = command.off + mind.normal(command.off === 0 ? 0.9 : 9);
      const done = applied(person.work, { ...command, id, off }).pieces.find((one) => one.id === piece)!;
      const notch = done.notches.find((one) => one.id === id);
      const edge = notch && findEdge(done, notch.edge);
      if (!notch || !edge) throw new Error('the notch is on no edge');
      const to = pointAtLength(edge.chain, notch.at);
      person.bring(`new:${piece}:princess`, { to, read: true }, `notch:${piece}:princess+${id}`);
    });
  },
);

export const graining = kind(
  'grainline',
  ['slanted-seam', 'label-and-grain'],
  { field: 300, content: 1.5 },
  (right) => {
    return (person, mind) => {
      person.take('grain');
      for (const command of right) {
        if (command.do !== 'grain') {
          person.give(command);
          continue;
        }
        const done = applied(person.work, command);
        const grain = done.pieces.find(({ id }) => id === command.piece)!.grainline!;
        const at = lerp(grain.from, grain.to, 0.5);
        const turn = rotationByAngle(at, (mind.normal(1.3) * Math.PI) / 180);
        const half = scale(unit(sub(grain.to, grain.from)), 75);
        const away = { x: 14, y: 0 };
        const end = (p: Point) => add(applyTo(turn, p), away);
        const to = end(add(at, half));
        const angle = () => {
          const drawn = person.work.pieces.find(({ id }) => id === command.piece)?.grainline;
          const off = drawn ? angleBetween(sub(drawn.to, drawn.from), sub(to, end(sub(at, half)))) : 1;
          return Math.abs(off) + person.tip.chance.normal(0.005);
        };
        person.pullFrom(
          end(sub(at, half)),
          command.piece,
          { to, read: true, way: true },
          () => angle() < 0.02,
        );
      }
    };
  },
);
