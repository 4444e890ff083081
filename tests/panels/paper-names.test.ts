import { expect, it } from 'vitest';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { measurable } from '../../src/lib/grading/paper-items.ts';
import { blockOf } from '../../src/lib/lessons/block.ts';
import { paperTables } from '../../src/lib/lessons/worked/for-paper.ts';
import { comparedOf, entriesOf, keyOf, unreadOf } from '../../src/lib/panels/paper/items.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import '../../src/lib/recipe/commands/index.ts';
import { openedId } from '../../src/lib/strings/names.ts';

function at(id: string, step: string) {
  const lesson = loadLesson(id)!;
  const tables = paperTables(lesson, new Map(), step, startWork(blockOf(lesson)), 'woven');
  const called = (about: string): string => (tables.pinned.has(about) ? openedId(about) : about);
  const items = measurable(tables.before, tables.worked, 'woven').filter(({ what }) => what === 'intake');
  const key = keyOf(items.find(({ about }) => about === 'slash')!);
  return {
    asked: unreadOf(items, called, { [key]: 'x' }, 'mm').map(({ path }) => path),
    found: comparedOf(tables.worked, entriesOf(items, { [key]: 20 }), called, 'woven').map(
      ({ about }) => about?.['open'],
    ),
  };
}

it('on paper a dart made with the pin is called the new dart, in the fields and in what is found', () => {
  const { asked, found } = at('mid-armhole-by-pivot', 'pivot');
  expect(asked).toEqual(['front, Intake of the new dart']);
  expect(found).toEqual(['new']);
});

it('so it is in a later step; a dart that was slashed stays a slash', () => {
  expect(at('mid-armhole-by-pivot', 'prove').asked).toEqual(['front, Intake of the new dart']);
  expect(at('waist-to-shoulder', 'move').asked).toEqual(['front, Intake of the slash']);
});
