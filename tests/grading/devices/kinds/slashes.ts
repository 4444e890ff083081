import { chainEnd, pointAtLength } from '../../../../src/lib/geometry/chain.ts';
import { nearestOnChain } from '../../../../src/lib/geometry/nearest.ts';
import { add, scale, sub, unit } from '../../../../src/lib/geometry/point.ts';
import { findEdge } from '../../../../src/lib/pattern/outline.ts';
import { landmark } from '../../../recipe/sample.ts';
import { applied, kind, onEdge } from './kind.ts';

export const slashing = kind(
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

export const bending = kind(
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
