import { expect, it } from 'vitest';
import { translation } from '../../src/lib/geometry/isometry.ts';
import type { Point } from '../../src/lib/geometry/types.ts';
import '../../src/lib/recipe/commands/index.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import { pieceBox } from '../../src/lib/table/boxes.ts';
import { tableLabels } from '../../src/lib/table/table-labels.ts';

const [front] = startWork({ figure: 'F2', form: 'waist' }).pieces;
const box = pieceBox(front!);
/** px for each mm. */
const K = 0.5;
const toScreen = ({ x, y }: Point): Point => ({ x: K * x, y: K * y });

/** What is written of a front and a back that lies so many px below it. */
function written(gap: number): readonly string[] {
  const back = { ...front!, id: 'back' };
  const down = translation({ x: 0, y: box.maxY - box.minY + gap / K });
  const labels = tableLabels({
    pieces: [front!, back],
    layout: new Map([['back', down]]),
    view: { toScreen },
    dimensions: [],
    marks: [],
    handles: [],
    hovered: undefined,
    anonymous: false,
    units: 'mm',
    named: true,
    overlaid: undefined,
    identified: {},
    opened: 'half',
    notches: false,
  });
  return labels.map(({ text }) => text);
}

it('the wearer’s right is named where there is room below the front, and never on another piece', () => {
  expect(written(60)).toContain('wearer’s right');
  expect(written(20)).not.toContain('wearer’s right');
  // The names of the pieces themselves are always there.
  expect(written(20)).toEqual(expect.arrayContaining(['front', 'back']));
});
