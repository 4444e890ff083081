import { add, scale, sub, unit } from '../../../../src/lib/geometry/point.ts';
import { WRONG, kind } from './kind.ts';

export const filling = kind(
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

export const easing = kind(
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

export const allowing = kind(
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
