import type { CDPSession, Locator, Page } from '@playwright/test';

/** A place on the page, px. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** What a person works with: a mouse, a pen, or fingers. Real events of the browser, no script in the page. */
export interface Hand {
  /** How large one mm has to be on the page before this hand can work on it, px. */
  readonly near: number;
  press(at: Point): Promise<void>;
  move(to: Point): Promise<void>;
  /** Moves on slowly, as a finger that places something finely. */
  creep?(to: Point): Promise<void>;
  lift(): Promise<void>;
  /** Breaks a press off where the person would: the second finger for touch, Escape for the mouse. */
  breakOff(): Promise<void>;
  /** Pushes a button, a label or a summary. */
  push(what: Locator): Promise<void>;
  /** Moves what lies at `from` to `to` and enlarges it by `factor`, all in one, inside `room`. */
  zoom(from: Point, to: Point, factor: number, room: Room): Promise<void>;
}

export interface Room {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export function mouseHand(page: Page): Hand {
  const hand: Hand = {
    near: 0.7,
    press: async (at) => {
      await page.mouse.move(at.x, at.y);
      await page.mouse.down();
    },
    move: (to) => page.mouse.move(to.x, to.y, { steps: 4 }),
    lift: () => page.mouse.up(),
    breakOff: async () => {
      await page.keyboard.press('Escape');
      await page.mouse.up();
    },
    push: (what) => what.click(),
    zoom: async (from, to, factor) => {
      // The wheel keeps the place under the pointer: this is the place that brings `from` to `to`.
      const at = {
        x: (factor * from.x - to.x) / (factor - 1),
        y: (factor * from.y - to.y) / (factor - 1),
      };
      await page.mouse.move(at.x, at.y);
      // d3-zoom enlarges by 2 ^ (0.002 px) of the wheel.
      await canZoom(page);
      await page.mouse.wheel(0, -Math.log2(factor) / 0.002);
    },
  };
  return hand;
}

/** A pen that draws on the screen; buttons are pushed with the mouse. */
export async function penHand(page: Page): Promise<Hand> {
  const session: CDPSession = await page.context().newCDPSession(page);
  let at: Point = { x: 0, y: 0 };
  const send = (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', { x, y }: Point, down: boolean) =>
    session.send('Input.dispatchMouseEvent', {
      type,
      x,
      y,
      button: type === 'mouseMoved' && !down ? 'none' : 'left',
      buttons: down ? 1 : 0,
      clickCount: type === 'mouseMoved' ? 0 : 1,
      pointerType: 'pen',
      force: 0.5,
    });
  return {
    ...mouseHand(page),
    press: async (to) => {
      at = to;
      await send('mouseMoved', to, false);
      await send('mousePressed', to, true);
    },
    move: async (to) => {
      const from = at;
      for (const part of [0.25, 0.5, 0.75, 1]) await send('mouseMoved', mix(from, to, part), true);
      at = to;
    },
    lift: async () => {
      await send('mouseReleased', at, false);
    },
  };
}

/** A quick finger's places follow upon each other so soon, s. */
const QUICK = 0.004;
/** So quick is one that places something finely, px/s. */
const CREEPS = 30;

export async function touchHand(page: Page): Promise<Hand> {
  const session: CDPSession = await page.context().newCDPSession(page);
  // A slow finger moves finely what it holds: each event is dated as a quick hand's, however busy the machine is.
  let clock = 0;
  const send = (
    type: 'touchStart' | 'touchMove' | 'touchEnd' | 'touchCancel',
    points: readonly Point[],
    timestamp = (clock = Math.max(clock, Date.now() / 1000)),
  ) =>
    session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: points.map(({ x, y }, id) => ({ x, y, id })),
      timestamp,
    });
  let at: Point = { x: 0, y: 0 };
  const slide = async (
    to: Point,
    steps: number,
    every = QUICK,
    ...others: readonly (readonly [Point, Point])[]
  ) => {
    const from = at;
    for (let i = 1; i <= steps; i += 1) {
      const part = i / steps;
      clock += every;
      await send('touchMove', [mix(from, to, part), ...others.map(([a, b]) => mix(a, b, part))], clock);
    }
    at = to;
  };
  return {
    near: 2.4,
    press: async (to) => {
      at = to;
      await send('touchStart', [to]);
    },
    move: (to) => slide(to, 4),
    creep: (to) => slide(to, 24, Math.hypot(to.x - at.x, to.y - at.y) / 24 / CREEPS),
    lift: async () => {
      // A finger rests for a moment before it is taken off; one that is still moving would start a fling.
      await page.waitForTimeout(60);
      await send('touchEnd', []);
    },
    breakOff: async () => {
      await send('touchStart', [at, { x: at.x + 60, y: at.y + 60 }]);
      await send('touchEnd', []);
    },
    push: (what) => what.tap(),
    zoom: async (from, to, factor, room) => {
      await canZoom(page);
      // Two fingers, one above the other's place: they land round `from` and go apart round `to`.
      const apart = (at: Point): number => Math.min(at.y - room.y, room.y + room.height - at.y);
      const near = { x: 0, y: Math.max(14, Math.min(apart(from), apart(to) / factor)) };
      const far = { x: 0, y: near.y * factor };
      at = plus(from, near, -1);
      await send('touchStart', [at]);
      await send('touchStart', [at, plus(from, near, 1)]);
      await slide(plus(to, far, -1), 6, QUICK, [plus(from, near, 1), plus(to, far, 1)]);
      await send('touchEnd', []);
    },
  };
}

const mix = (a: Point, b: Point, part: number): Point => ({
  x: a.x + (b.x - a.x) * part,
  y: a.y + (b.y - a.y) * part,
});
const plus = (a: Point, b: Point, times: number): Point => ({ x: a.x + b.x * times, y: a.y + b.y * times });

/** What zooms is fetched once a hand is there; a person who is a little too quick would do it once more. */
export async function canZoom(page: Page): Promise<void> {
  await page.evaluate(() => dispatchEvent(new PointerEvent('pointermove')));
  await page.waitForFunction(() => {
    const drawing = document.querySelector('.desk > svg');
    return drawing !== null && '__zoom' in drawing;
  });
}
