import { expect, type Page } from '@playwright/test';
import { Desk, touchHand, type Goal } from './table.ts';

export const WAIST = 'right/waist-dart';
/** The handles at the two legs of the waist dart by which its parts are turned. */
export const [OWN, OTHER] = [`turn:${WAIST}:freed`, `turn:${WAIST}:rest`] as const;

const [width, height, colour] = (process.env['PIN_LOOK'] ?? '').split(',');
/** On a phone there are fingers. */
export const narrow = Number(width || 1440) < 600;

/** Opens a lesson and starts it, in the look that PIN_LOOK names; with fingers on a phone. */
export async function begin(page: Page, lesson: string, fingers = narrow): Promise<Desk> {
  if (width && height) await page.setViewportSize({ width: Number(width), height: Number(height) });
  if (colour === 'dark' || colour === 'light') await page.emulateMedia({ colorScheme: colour });
  const desk = new Desk(page, fingers ? await touchHand(page) : undefined);
  await desk.open(lesson);
  await desk.push('Start at once');
  return desk;
}

/** So far along an edge of the front, as it is drawn. */
export const onEdge =
  (desk: Desk, edge: string, part: number): Goal =>
  async () => {
    const line = await desk.drawn(edge);
    return desk.place(line.pointAt(part * line.length));
  };
/** The bust point, as it is drawn. */
export const bust =
  (desk: Desk): Goal =>
  async () =>
    desk.place(await desk.mark('right/bust-point'));
/** So far on the way from one place to another. */
export const between =
  (desk: Desk, from: Goal, to: Goal, part = 0.5): Goal =>
  async () => {
    const [a, b] = [await desk.find(from), await desk.find(to)];
    return { x: a.x + (b.x - a.x) * part, y: a.y + (b.y - a.y) * part };
  };

/** Both legs of the waist dart pulled up to the bust point. */
export async function workingDart(desk: Desk): Promise<void> {
  await desk.drag(`tip:${WAIST}`, `to:${WAIST}`);
  await desk.hasDone(1);
  await desk.accepted();
}

/** Pulls a slash line from an edge to the bust point; meanwhile it is written how far from the ends of the edge it begins. */
export async function slashLine(
  desk: Desk,
  edge: string,
  ends: readonly string[],
  shot: string,
): Promise<void> {
  const from = onEdge(desk, edge, 0.66);
  await desk.dragTo(from, between(desk, from, bust(desk)), bust(desk));
  for (const end of ends)
    await expect.poll(() => desk.written()).toContainEqual(expect.stringMatching(`^${end} [\\d.]+ mm$`));
  await desk.picture(shot);
  await desk.hand.lift();
}
