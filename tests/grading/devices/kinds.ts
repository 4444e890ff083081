import { loadLesson } from '../../../src/cli/load-lessons.ts';
import { chainEnd, chainLength, pointAtLength } from '../../../src/lib/geometry/chain.ts';
import { applyTo, rotationByAngle } from '../../../src/lib/geometry/isometry.ts';
import { nearestOnChain } from '../../../src/lib/geometry/nearest.ts';
import { add, distance, lerp, scale, sub, unit } from '../../../src/lib/geometry/point.ts';
import { angleBetween } from '../../../src/lib/geometry/trig.ts';
import type { Chain, Point } from '../../../src/lib/geometry/types.ts';
import { tightest } from '../../../src/lib/grading/curvature.ts';
import { blockOf } from '../../../src/lib/lessons/block.ts';
import type { LessonStep } from '../../../src/lib/lessons/types.ts';
import { workedStep } from '../../../src/lib/lessons/worked/index.ts';
import { lineOf } from '../../../src/lib/machines/scene.ts';
import { findEdge } from '../../../src/lib/pattern/outline.ts';
import { apply } from '../../../src/lib/recipe/apply.ts';
import { startWork } from '../../../src/lib/recipe/start.ts';
import type { Command, Fabric, Work } from '../../../src/lib/recipe/types.ts';
import { landmark, sampleAttempt } from '../../recipe/sample.ts';
import { type Chance, PATIENCE } from './noise.ts';
import type { Person, Task } from './person.ts';

/*
 * Every kind of gesture that the lessons ask for, each in a step that is marked by it. What a person means is the same for all devices: near
 * what is right, with an error of the mind, so large that somebody with a perfect hand is accepted about 85 times in a hundred.
 */

export interface Kind {
  readonly name: string;
  readonly task: Task;
  readonly rule: LessonStep;
  readonly work: (person: Person, mind: Chance) => void;
}

const applied = (work: Work, command: Command): Work => {
  const next = apply(work, command);
  if ('refused' in next) throw new Error(`${command.do}: ${JSON.stringify(next.refused)}`);
  return next.work;
};

/** The table before a step of a lesson, worked rightly until there, and the commands that work it. */
function before(lesson: string, step: string, fabric: Fabric) {
  const found = loadLesson(lesson)!;
  let work = startWork(blockOf(found));
  for (const one of found.steps) {
    const commands = workedStep(one, work, fabric);
    if (one.id === step) return { work, rule: one, right: commands };
    for (const command of commands) work = applied(work, command);
  }
  throw new Error(`no step ${step} in ${lesson}`);
}

/** With this part of a person's things something is meant that is wrong altogether. */
const WRONG = 0.08;

function kind(
  name: string,
  [lesson, step]: readonly [string, string],
  { field, content, fabric = 'knit' }: { field?: number; content: number; fabric?: Fabric },
  make: (right: readonly Command[], work: Work) => Kind['work'],
): Kind {
  const { work, rule, right } = before(lesson, step, fabric);
  return { name, rule, task: { work, fabric, field, content }, work: make(right, work) };
}

const feet = (work: Work, side: string) =>
  nearestOnChain(lineOf(work)!.chain, landmark(work, `${side}/bust-point`)).length;
const along = (work: Work, mm: number): Point => pointAtLength(lineOf(work)!.chain, mm);
const middle = (work: Work, edge: string): Point => onEdge(work, edge, 0.5);
function onEdge(work: Work, id: string, part: number): Point {
  const { chain } = work.pieces.map((piece) => findEdge(piece, id)).find(Boolean)!;
  return pointAtLength(chain, chainLength(chain) * part);
}

const pointing = kind('point out', ['reading-the-block', 'find'], { content: 2 }, () => (person, mind) => {
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
});

const OUT = { right: { x: 0.94, y: -0.34 }, left: { x: -0.2, y: 0.98 } } as const;
const passing = (work: Work, side: 'right' | 'left'): number =>
  nearestOnChain(lineOf(work)!.chain, landmark(work, `${side}/bust-point`)).distance;

const byPoints = kind(
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

const inOneGo = kind('free stroke', ['slanted-seam', 'style-line'], { content: 4 }, () => (person, mind) => {
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
});

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

const NOTCHES = [
  ['right', -1],
  ['right', 1],
  ['left', -1],
  ['left', 1],
] as const;
const slidNotches = kind(
  'notch, slid',
  ['slanted-seam', 'notches'],
  { field: 150, content: 1 },
  () => (person, mind) => {
    person.take('notch');
    NOTCHES.forEach(([side, way], i) => {
      const to = along(person.work, feet(person.work, side) + way * mind.normal(5.5, 40));
      person.bring(`new:${side}`, { to, read: true }, `notch:n${i + 1}`);
    });
  },
);
const pressedNotches = kind(
  'notch, pressed',
  ['slanted-seam', 'notches'],
  { field: 150, content: 1 },
  () => (person, mind) => {
    person.take('notch');
    NOTCHES.forEach(([side, way], i) => {
      const to = along(person.work, feet(person.work, side) + way * mind.normal(5.5, 40));
      const id = `notch:n${i + 1}`;
      person.tapAt(to, 'front', () => person.target(id) !== undefined);
      const now = person.target(id);
      if (now && distance(now.point, to) > person.task.content) person.bring(id, { to, read: true });
    });
  },
);

const extending = kind(
  'extend',
  ['slanted-seam', 'working-darts'],
  { field: 150, content: 1.2 },
  () => (person, mind) => {
    person.take('extend-dart');
    for (const side of ['right', 'left']) {
      const bust = landmark(person.work, `${side}/bust-point`);
      const from = person.target(`tip:${side}`)!.point;
      const short = mind.next() < WRONG ? 5 + 15 * mind.next() : 0;
      const to = add(bust, scale(unit(sub(from, bust)), short));
      person.bring(`tip:${side}`, { to: mind.around(to, 0.7), read: true });
    }
  },
);

const connecting = kind(
  'connector',
  ['slanted-seam', 'connectors'],
  { field: 150, content: 2 },
  () => (person, mind) => {
    person.take('connect');
    for (const side of ['right', 'left']) {
      const to = along(person.work, feet(person.work, side) + mind.normal(3));
      person.bring(`tip:${side}`, { to, read: true }, `foot:${side}`);
    }
  },
);

const closing = kind(
  'cut and close',
  ['slanted-seam', 'first-dart'],
  { field: 250, content: 1 },
  () => (person, mind) => {
    person.take('slash');
    const tip = person.target('tip:right')!.point;
    const cut = person.target('cut:right')!.point;
    const beyond = mind.next() < WRONG ? 4 + 6 * mind.next() : mind.normal(0.7);
    const foot = lineOf(person.work)!.feet['right']!.foot;
    person.bring('cut:right', { to: add(tip, scale(unit(sub(tip, foot)), beyond)), read: true });
    if (distance(cut, tip) < 1) return;
    person.take('turn');
    const other = person.target('turn:right:rest')?.point;
    if (!other) return;
    const about = landmark(person.work, 'right/bust-point');
    const by = (mind.next() < WRONG ? mind.normal(8) : mind.normal(0.7)) / distance(about, other);
    person.bring('turn:right:freed', { to: applyTo(rotationByAngle(about, by), other), read: true });
  },
);

const splitting = kind(
  'split by turning',
  ['split-a-dart', 'split'],
  { field: 250, content: 0.8 },
  (right) => (person, mind) => {
    for (const command of right.filter((one) => one.do === 'cut-slash')) person.give(command);
    const turns = right.filter((one) => one.do === 'turn');
    turns.forEach((turn, i) => {
      person.take('turn', { into: turn.into ?? '', dart: turn.dart });
      const id = `turn:${turn.dart}:freed`;
      const own = person.target(id);
      const other = person.target(`turn:${turn.dart}:rest`);
      const pin = person.target(`pin:${turn.dart}`)?.point;
      if (!own || !other || !pin) return;
      const whole = angleBetween(sub(own.point, pin), sub(other.point, pin));
      const off = mind.normal(2.2) / distance(pin, own.point);
      const by = i + 1 < turns.length ? whole / 2 + off : whole;
      person.bring(id, { to: applyTo(rotationByAngle(pin, by), own.point), read: true }, 'none');
    });
  },
);

const slashing = kind(
  'slash line',
  ['waist-to-shoulder', 'slash-line'],
  { field: 300, content: 2 },
  () => (person, mind) => {
    person.take('draw-slash');
    const bust = landmark(person.work, 'right/bust-point');
    const from = onEdge(person.work, 'right/shoulder', mind.normal(0.1, 0.5));
    person.pullFrom(from, 'front', { to: mind.around(bust, 0.7), read: true });
    const [drawn] = person.work.lines.filter((one) => one.kind === 'slash');
    if (!drawn) return;
    // An end that came to no point has a ring of its own: it is seen, and pulled there.
    if (person.target(`to:${drawn.id}`)) person.bring(`to:${drawn.id}`, { to: bust, read: true });
    person.bring(`from:${drawn.id}`, { to: from, read: true });
  },
);

const bending = kind(
  'bent slash lines',
  ['parallel-darts', 'lines'],
  { field: 300, content: 1.5 },
  (right, work) => (person, mind) => {
    person.take('draw-slash');
    const done = right.reduce(applied, work);
    const bust = landmark(work, 'right/bust-point');
    for (const { ends, chain } of done.lines) {
      const [start, bend] = [chain[0]!.a, chainEnd(chain.slice(0, 1))];
      const edge = findEdge(work.pieces[0]!, ends[0]!)!.chain;
      const there = pointAtLength(edge, nearestOnChain(edge, start).length + mind.normal(1.2));
      const pinned = add(bust, scale(unit(sub(add(bend, sub(there, start)), bust)), 22.2));
      const count = person.work.lines.length;
      const drawn = () => person.work.lines.length > count;
      const given = person.commands.length;
      if (!person.pullFrom(there, 'front', { to: bust, read: true }, drawn)) {
        // Too near to the line before, which went along instead: the edge's own handle lies in the middle of what is free.
        person.undo(given);
        person.pullNew(`start:${ends[0]!}`, { to: bust, read: true }, drawn);
      }
      const id = person.work.lines[count]?.id;
      if (id === undefined) return;
      if (person.target(`to:${id}`)) person.bring(`to:${id}`, { to: bust, read: true });
      person.bring(`from:${id}`, { to: there, read: true });
      person.bring(`via:${id}`, { to: mind.around(pinned, 1), read: true });
    }
  },
);

const pivoting = kind(
  'pin and swing',
  ['mid-armhole-by-pivot', 'pivot'],
  { field: 300, content: 1.5 },
  () => (person, mind) => {
    person.take('pivot');
    const place = onEdge(person.work, 'right/armhole', mind.normal(0.065, 0.5));
    person.tapAt(place, 'front', () => person.target('mark') !== undefined);
    const mark = person.target('mark');
    if (!mark) return;
    if (distance(mark.point, place) > person.task.content) person.bring('mark', { to: place, read: true });
    const dart = 'right/waist-dart';
    const other = person.target(`turn:${dart}:rest`)?.point;
    if (!other) return;
    const about = landmark(person.work, 'right/bust-point');
    const by = (mind.next() < WRONG ? mind.normal(8) : mind.normal(0.7)) / distance(about, other);
    person.bring(`turn:${dart}:freed`, { to: applyTo(rotationByAngle(about, by), other), read: true });
  },
);

const backing = kind(
  'back off',
  ['finish-a-dart', 'back-off'],
  { field: 150, content: 1, fabric: 'woven' },
  (right) => (person, mind) => {
    const bust = landmark(person.work, 'right/bust-point');
    const done = right.reduce(applied, person.work);
    for (const dart of ['right', 'right/waist-dart'])
      person.give({ do: 'extend-dart', dart, to: { landmark: 'right/bust-point' } });
    person.take('back-off');
    const sewn = done.pieces.flatMap((piece) => piece.finished ?? []);
    // Both points lie in the bust point at first: the one on top goes first.
    const aims = { 'right/waist-dart': mind.normal(2.8, 15.8), right: mind.normal(4.5, 25.5) };
    for (const [dart, aim] of Object.entries(aims)) {
      const point = sewn.find((one) => one.dart === dart)!.sewnPoint;
      person.bring(`tip:${dart}`, { to: add(bust, scale(unit(sub(point, bust)), aim)), read: true });
    }
  },
);

const filling = kind(
  'fullness',
  ['gathers-tucks-ease', 'gathers'],
  { field: 200, content: 1 },
  (right) => (person, mind) => {
    person.take('fullness', { as: 'gathers' });
    const [command] = right;
    if (command?.do !== 'fullness') throw new Error('no fullness in the worked step');
    const { dart } = command;
    const mouth = person.target(`mouth:${dart}`)!.point;
    for (const way of ['before', 'after']) {
      const id = `over:${way}:${dart}`;
      const own = person.target(id)!;
      const aim = mind.normal(10, 32.5);
      const to = add(own.point, scale(unit(sub(own.point, mouth)), aim - own.at!));
      person.bring(id, { to, read: true }, id);
    }
    person.tap(`mouth:${dart}`);
  },
);

const seamNotching = kind(
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

const graining = kind(
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

const easing = kind(
  'leftover',
  ['slanted-seam', 'leftover'],
  { field: 250, content: 1 },
  (right) => (person, mind) => {
    for (const command of right) {
      const copied = 'piece' in command && command.piece.includes('@');
      if (command.do === 'bridge' && !copied) {
        person.take('bridge');
        const { piece, dart } = command;
        for (const way of ['before', 'after']) {
          const id = `${way}:${piece}:${dart}`;
          const [own, other] = [
            person.target(id),
            person.target(`${way === 'before' ? 'after' : 'before'}:${piece}:${dart}`),
          ];
          if (!own || !other) return;
          const to = add(own.point, scale(unit(sub(own.point, other.point)), mind.normal(3, 5)));
          person.bring(id, { to, read: true }, id);
        }
        person.act(`bridge:${piece}:${dart}`);
      } else if (command.do === 'ease' && !copied) {
        person.take('ease');
        const [from, to] = [command.from, command.to].map((n) => `notch:${command.piece}:${n}`);
        const goal = to && person.target(to)?.point;
        if (!from || !goal) return;
        person.bring(from, { to: goal }, 'none');
      } else person.give(command);
    }
  },
);

const allowing = kind(
  'allowances',
  ['slanted-seam', 'allowances'],
  { content: 2 },
  (right) => (person, mind) => {
    const wrong = mind.next() < WRONG;
    person.take('allow');
    for (const command of right)
      if (command.do === 'allow') {
        person.option('width', wrong && command.group === 'style-line' ? command.width + 4 : command.width);
        person.tap(`group:${command.piece}:${command.group}`);
      } else person.give(command);
  },
);

export const KINDS: readonly Kind[] = [
  pointing,
  byPoints,
  inOneGo,
  slidNotches,
  pressedNotches,
  extending,
  connecting,
  closing,
  splitting,
  slashing,
  bending,
  pivoting,
  backing,
  filling,
  seamNotching,
  graining,
  easing,
  allowing,
];
