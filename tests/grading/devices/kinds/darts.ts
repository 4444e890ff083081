import { applyTo, rotationByAngle } from '../../../../src/lib/geometry/isometry.ts';
import { add, distance, scale, sub, unit } from '../../../../src/lib/geometry/point.ts';
import { angleBetween } from '../../../../src/lib/geometry/trig.ts';
import { lineOf } from '../../../../src/lib/machines/scene.ts';
import { landmark } from '../../../recipe/sample.ts';
import { WRONG, along, applied, feet, kind, onEdge } from './kind.ts';

export const extending = kind(
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

export const connecting = kind(
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

export const closing = kind(
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

export const splitting = kind(
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

export const pivoting = kind(
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

export const backing = kind(
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
