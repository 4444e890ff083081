import { expect, test } from '@playwright/test';
import { begin, between, bust, onEdge, OTHER, OWN, slashLine, WAIST, workingDart } from './support/course.ts';
import { distance, type Desk, type Goal } from './support/table.ts';

/* More lessons of the course wholly on the table: darts finished, made fullness or a seam, bent lines; and one with fingers on a phone. */

/** So many mm from one place towards another, in the drawing of the front. */
const towards =
  (desk: Desk, from: Goal, to: Goal, mm: number): Goal =>
  async () => {
    const [a, b] = [await desk.find(from), await desk.find(to)];
    const part = (mm * (await desk.scale())) / distance(a, b);
    return { x: a.x + (b.x - a.x) * part, y: a.y + (b.y - a.y) * part };
  };

const DARTS = [
  ['right', ['right/dart-lower', 'right/dart-upper'], 28],
  [WAIST, [`${WAIST}-centre`, `${WAIST}-side`], 16],
] as const;
/** The middle between the ends of two legs that lie away from the bust point. */
const mouth =
  (desk: Desk, legs: readonly [string, string]): Goal =>
  async () => {
    const from = await desk.mark('right/bust-point');
    const ends = await Promise.all(
      legs.map(async (leg) => {
        const { points } = await desk.drawn(leg);
        const [a, b] = [points[0]!, points.at(-1)!];
        return distance(a, from) > distance(b, from) ? a : b;
      }),
    );
    return desk.place({ x: (ends[0]!.x + ends[1]!.x) / 2, y: (ends[0]!.y + ends[1]!.y) / 2 });
  };

/** Cuts along a slash line to its tip, round its bend where it has one. */
async function cut(desk: Desk, slash: string, ...bends: readonly Goal[]): Promise<void> {
  await desk.drag(`cut:${slash}`, ...bends, `tip:${slash}`);
}

/** Pulls the leg of the waist dart on to the other one. */
async function closeWaist(desk: Desk): Promise<void> {
  await desk.drag(OWN, between(desk, OWN, OTHER), OTHER);
}

/** Waist dart to a low place of the side seam by scissors: from the working dart to the proof. */
async function throughTheSide(desk: Desk, part: number): Promise<void> {
  await workingDart(desk);
  await desk.take('Slash line');
  const from = onEdge(desk, 'right/side', part);
  await desk.drag(from, between(desk, from, bust(desk)), bust(desk));
  await desk.hasDone(1);
  await desk.take('Scissors to the bust point');
  await cut(desk, 'slash');
  await desk.hasDone(2);
  await desk.take('Turn');
  await closeWaist(desk);
  await desk.hasDone(3);
  await desk.accepted();
  await desk.tap('piece:front');
  await desk.accepted('Finish');
}

test('french-dart by mouse: slashed from low on the side, turned, proved', async ({ page }) => {
  const desk = await begin(page, 'french-dart');
  // The edge runs up from the waist: a quarter of it is three quarters of the way down.
  await throughTheSide(desk, 0.25);
  expect(desk.errors).toEqual([]);
});

test('finish-a-dart by mouse: points pulled back, caps folded', async ({ page }) => {
  const desk = await begin(page, 'finish-a-dart');
  await desk.take('Sewn point');
  // 19 to 32 mm for the side dart, 12.7 to 19 mm for the waist dart: read in the lesson.
  for (const [i, [dart, legs, mm]] of DARTS.entries()) {
    await desk.drag(`tip:${dart}`, towards(desk, bust(desk), mouth(desk, legs), mm));
    await desk.hasDone(i + 1);
  }
  await desk.picture('finish-backed-off');
  await desk.accepted();

  // A side dart lies across, a waist dart runs up: each is offered its own ways, the usual one first.
  const fold = (dart: string) => page.getByRole('combobox', { name: new RegExp(`^Fold the ${dart} dart`) });
  await expect(fold('right side').locator('option')).toHaveText(['down', 'up']);
  await expect(fold('right waist').locator('option')).toHaveText(['to centre front', 'to the side']);
  await fold('right side').selectOption('up');
  await fold('right side').selectOption('down');
  await desk.tap('mouth:right');
  await desk.hasDone(1);
  await desk.accepted();

  await desk.tap(`mouth:${WAIST}`);
  await desk.hasDone(1);
  await desk.picture('finish-capped');
  await desk.accepted('Finish');
  expect(desk.errors).toEqual([]);
});

test('gathers-tucks-ease by mouse: three slashes, shares of the angle, fullness of three kinds', async ({
  page,
}) => {
  const desk = await begin(page, 'gathers-tucks-ease');
  await workingDart(desk);
  for (const [i, edge] of ['right/shoulder', 'right/neckline', 'right/armhole'].entries()) {
    const from = onEdge(desk, edge, 0.5);
    await desk.drag(from, between(desk, from, bust(desk)), bust(desk));
    await desk.hasDone(i + 1);
  }
  await desk.accepted();
  const slashes = (await desk.handles()).filter((id) => id.startsWith('cut:')).map((id) => id.slice(4));
  for (const [i, one] of slashes.entries()) {
    await cut(desk, one);
    await desk.hasDone(i + 1);
  }
  await desk.take('Turn');
  // Half of the angle, then seven tenths of what is left (35 %), then the rest: the shares are the lesson's.
  for (const [i, share] of [50, 70].entries()) {
    await desk.choose('into', slashes[i]!);
    await desk.type('share', `${share} %`);
    await desk.push(`Turn to close ${share} %`);
    await desk.hasDone(slashes.length + i + 1);
  }
  await desk.choose('into', slashes[2]!);
  await closeWaist(desk);
  await desk.hasDone(slashes.length + 3);
  await desk.picture('gathers-turned');
  await desk.accepted();

  for (const [i, as] of ['gathers', 'tucks', 'ease'].entries()) {
    const one = slashes[i]!;
    await desk.choose('as', as);
    for (const way of ['before', 'after']) {
      const end = `over:${way}:${one}`;
      await desk.drag(end, between(desk, end, `mouth:${one}`, 0.2));
    }
    await desk.hasDone(0);
    await desk.tap(`mouth:${one}`);
    await desk.hasDone(1);
    await desk.picture(`gathers-${as}`);
    await desk.accepted(i === 2 ? 'Finish' : 'Next step');
  }
  expect(desk.errors).toEqual([]);
});

test('shoulder-princess by mouse: the seam is cut, smoothed and notched', async ({ page }) => {
  const desk = await begin(page, 'shoulder-princess');
  await desk.drag('tip:right', 'to:right');
  await desk.drag(`tip:${WAIST}`, `to:${WAIST}`);
  await desk.hasDone(2);
  await desk.accepted();

  const from = onEdge(desk, 'right/shoulder', 0.5);
  await desk.drag(from, between(desk, from, bust(desk)), bust(desk));
  await desk.hasDone(1);
  await desk.accepted();

  await cut(desk, 'slash');
  await desk.hasDone(1);
  await desk.take('Turn');
  await desk.drag(
    'turn:right:freed',
    between(desk, 'turn:right:freed', 'turn:right:rest'),
    'turn:right:rest',
  );
  await desk.hasDone(2);
  await desk.accepted();

  await desk.tap('mouth:slash');
  await desk.hasDone(0);
  await desk.tap(`mouth:${WAIST}`);
  await desk.hasDone(1);
  await desk.picture('princess-parted');
  await desk.accepted();

  // The curve reaches 30 mm along the seam, read in the lesson.
  for (const [i, piece] of ['front-centre', 'front-side'].entries()) {
    const handle = `smooth:${piece}:right/bust-point`;
    const corner = await desk.find(handle);
    await desk.drag(handle, async () => ({ x: corner.x, y: corner.y + 30 * (await desk.scale()) }));
    await desk.hasDone(i + 1);
  }
  await desk.picture('princess-smooth');
  await desk.accepted();

  // Picked up at the bust point and placed there; the others by a press on the seam, 30 to 70 mm off (read in the lesson).
  const fresh = 'new:front-side:princess';
  await desk.tap(fresh);
  await desk.tap(fresh);
  await desk.hasDone(1);
  for (const [i, [key, off]] of [['princess/1/b', 50] as const, ['princess/2/b', 40] as const].entries()) {
    await desk.tap(async () => {
      const joint = await desk.mark('right/bust-point', 'front-side');
      const line = await desk.drawn(key, 'front-side');
      const { along } = line.nearest(joint);
      return desk.place(line.pointAt(along < line.length / 2 ? along + off : along - off), 'front-side');
    });
    await desk.hasDone(i + 2);
  }
  await desk.picture('princess-notched');
  await desk.accepted('Finish');
  expect(desk.errors).toEqual([]);
});

/**
 * Where the two bent lines bend, from the bust point, mm: on a circle of 22.2 mm (between 19 and 25.4, read in the lesson), and as far
 * apart as the lines begin on the shoulder. Derived.
 */
const BENDS = [
  [0.387, { x: -16.2, y: -15.2 }],
  [0.613, { x: 10.7, y: -19.4 }],
] as const;

test('parallel-darts by mouse: two bent lines, half of the angle in each, points at their pivots', async ({
  page,
}) => {
  const desk = await begin(page, 'parallel-darts');
  await workingDart(desk);
  const bend =
    (i: 0 | 1): Goal =>
    async () => {
      const { x, y } = await desk.mark('right/bust-point');
      return desk.place({ x: x + BENDS[i][1].x, y: y + BENDS[i][1].y });
    };
  const lines = ['slash', 'slash-2'] as const;
  for (const i of [0, 1] as const) {
    const from = onEdge(desk, 'right/shoulder', BENDS[i][0]);
    await desk.drag(from, between(desk, from, bust(desk)), bust(desk));
    await desk.hasDone(2 * i + 1);
    await desk.drag(`via:${lines[i]}`, bend(i));
    await desk.hasDone(2 * i + 2);
  }
  await desk.picture('parallel-lines');
  await desk.accepted();

  for (const i of [0, 1] as const) {
    await cut(desk, lines[i], bend(i));
    await desk.hasDone(i + 1);
  }
  await desk.take('Turn');
  await desk.choose('into', lines[0]);
  await desk.type('share', '50 %');
  await desk.push('Turn to close 50 %');
  await desk.hasDone(3);
  await desk.choose('into', lines[1]);
  await closeWaist(desk);
  await desk.hasDone(4);
  await desk.picture('parallel-turned');
  await desk.accepted();

  for (const [i, one] of lines.entries()) {
    await desk.drag(`tip:${one}`, towards(desk, `tip:${one}`, onEdge(desk, 'right/neckline', 0), 5));
    await desk.hasDone(i + 1);
  }
  await desk.picture('parallel-finished');
  await desk.accepted();

  await desk.tap('piece:front');
  await desk.accepted('Finish');
  expect(desk.errors).toEqual([]);
});

test.describe('with fingers on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('waist-to-side by touch: draw, cut, turn, prove', async ({ page }) => {
    const desk = await begin(page, 'waist-to-side', true);
    await workingDart(desk);
    await slashLine(desk, 'right/side', ['underarm', 'waist corner at the side'], 'touch-draw');
    await desk.hasDone(1);
    await desk.accepted();
    await cut(desk, 'slash');
    await desk.hasDone(1);
    await desk.take('Turn');
    await closeWaist(desk);
    await desk.hasDone(2);
    await desk.accepted();
    await desk.tap('piece:front');
    await desk.hasDone(1);
    await desk.accepted('Finish');
    expect(desk.errors).toEqual([]);
  });
});
