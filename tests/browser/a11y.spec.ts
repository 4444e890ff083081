import { expect, test, type Page } from '@playwright/test';
import { sampleAttempt } from '../recipe/sample.ts';
import {
  check,
  cutShort,
  enter,
  lesson,
  LESSON_PATH,
  openAttempt,
  stepButton,
  stretchOf,
} from './support/attempt.ts';
import { expectNoViolation } from './support/axe.ts';
import { Keys } from './support/keys.ts';
import { unfold } from './support/typed.ts';

/* What axe cannot measure of the rules stands in tests of its own below. */

const sample = sampleAttempt(lesson.figure, 'knit');
/** Everything given but the last command of each step that has more than one: so most steps have something to find fault with. */
const faulty = {
  ...sample,
  commands: sample.commands.filter((command, i) => {
    const { from, to } = stretchOf(sample, command.step ?? '');
    const needed = [
      'style-line',
      'first-dart',
      'second-dart',
      'open-out',
      'leftover',
      'separate',
      'connectors',
    ];
    return to - from === 1 || i < to - 1 || needed.includes(command.step ?? '');
  }),
};

for (const [name, viewport] of [
  ['desk', { width: 1440, height: 900 }],
  ['phone', { width: 390, height: 844 }],
] as const)
  for (const colorScheme of ['light', 'dark'] as const)
    test.describe(`${name}, ${colorScheme}`, () => {
      test.use({ viewport, colorScheme });

      test('home, opening and every step, with findings, typed values and words open', async ({ page }) => {
        test.setTimeout(300_000);
        await page.goto('/');
        await expectNoViolation(page, 'home');
        await page.goto(LESSON_PATH);
        await page.getByRole('button', { name: 'Start at once' }).waitFor();
        await expectNoViolation(page, 'opening');
        await enter(page);
        await openAttempt(page, faulty);
        for (const { id } of lesson.steps) {
          await stepButton(page, id).click();
          await expect(stepButton(page, id)).toHaveAttribute('aria-current', 'step');
          await check(page);
          const right = page.locator('[data-verdict] details summary');
          if ((await right.count()) > 0) await right.click();
          await unfold(page, 'typed');
          await unfold(page, 'twin');
          await expectNoViolation(page, id);
        }
      });

      test('the practice room with what it suggests, and drills before and at work', async ({ page }) => {
        await page.goto('/practice/');
        await page.getByRole('button', { name: 'Practise this' }).waitFor();
        await expectNoViolation(page, 'practice room');
        for (const fragment of ['2.fullness.7.knit.usual.3.any', '2.line.3.woven.usual.3.full']) {
          await page.goto(`/practice/#${fragment}`);
          await page.getByRole('button', { name: 'Begin' }).waitFor();
          await expectNoViolation(page, fragment);
          await page.getByRole('button', { name: 'Begin' }).click();
          await check(page);
          await unfold(page, 'typed');
          await expectNoViolation(page, `${fragment}, at work`);
        }
      });

      test('the demonstration, the menu, notices and hints', async ({ page }) => {
        await page.goto(LESSON_PATH);
        await page.getByRole('button', { name: 'Watch the demonstration' }).click();
        await page.getByRole('region', { name: 'Demonstration' }).waitFor();
        await page.getByRole('button', { name: 'Pause' }).click();
        await expectNoViolation(page, 'demonstration');
        await page.getByRole('button', { name: 'To my own table' }).click();
        await check(page);
        await page.getByRole('button', { name: 'A hint', exact: true }).click();
        await page.getByText('What to do, and why').hover();
        await page.locator('[aria-expanded].word').first().click();
        const file = { name: 'broken.json', mimeType: 'application/json', buffer: Buffer.from('{') };
        await page.getByLabel('Attempt file').setInputFiles(file);
        await page.locator('.notices .notice').waitFor();
        await page.getByText('My work').click();
        await expectNoViolation(page, 'menu, notice, hint');
      });
    });

test.describe('what axe cannot measure', () => {
  test('every stop of the Tab key shows where it is, and nothing lies over it', async ({ page }) => {
    const keys = new Keys(page);
    await enter(page);
    await openAttempt(page, cutShort(sample, stretchOf(sample, 'style-line').to));
    // A page that opens begins at its top.
    await page.reload();
    await page.getByRole('button', { name: 'Check', exact: true }).waitFor();
    const stops: string[] = [];
    for (let i = 0; i < 120; i += 1) {
      await keys.press('Tab');
      const stop = await page.evaluate(stopHere);
      if (stop === undefined) break;
      expect(stop.faults, stop.name).toEqual([]);
      stops.push(stop.name);
    }
    // Past the last stop the keyboard leaves the page: it is caught nowhere.
    expect(await page.evaluate(stopHere)).toBeUndefined();
    for (const name of ['summary My work', 'button Check', 'handle point:2', 'summary By typed values'])
      expect(stops).toContain(name);
    expect(new Set(stops).size).toBe(stops.length);
  });

  test('what shows the focus, the lines and the words stand out from what lies behind them', async ({
    page,
  }) => {
    await enter(page);
    for (const theme of ['light', 'dark'] as const) {
      await page.evaluate((one) => (document.documentElement.dataset['theme'] = one), theme);
      const colour = await page.evaluate((names) => {
        const style = getComputedStyle(document.documentElement);
        return Object.fromEntries(names.map((name) => [name, style.getPropertyValue(`--${name}`).trim()]));
      }, COLOURS);
      // Cloth is drawn with some of the paper in it: the table's style sheet mixes 72 parts of 100.
      for (const cloth of ['cloth-upper', 'cloth-lower'])
        colour[cloth] = mixed(colour[cloth]!, colour['paper']!, 0.72);
      const contrast = (a: string, b: string) => ratio(colour[a]!, colour[b]!);
      for (const behind of ['desk', 'paper', 'panel', 'cloth-upper', 'cloth-lower'])
        for (const line of ['focus', 'pencil', 'accent', 'wrong'])
          // 3 : 1 for what is no text (WCAG 1.4.11 and 2.4.13; read).
          expect.soft(contrast(line, behind), `${theme}: ${line} on ${behind}`).toBeGreaterThanOrEqual(3);
      for (const behind of ['desk', 'paper', 'panel'])
        for (const word of ['ink', 'ink-soft', 'accent', 'wrong', 'right', 'note'])
          // 4.5 : 1 for text (WCAG 1.4.3; read).
          expect.soft(contrast(word, behind), `${theme}: ${word} on ${behind}`).toBeGreaterThanOrEqual(4.5);
    }
  });

  test('there is one place that speaks, in every step and when the lesson is finished', async ({ page }) => {
    await enter(page);
    await openAttempt(page, sample);
    // SvelteKit has one more of its own, which tells the title of a page that was gone to.
    const speaking = page.locator(
      ':is([aria-live], [role="status"], [role="alert"], [role="log"], output):not(#svelte-announcer)',
    );
    for (const { id } of lesson.steps) {
      await stepButton(page, id).click();
      expect(await check(page)).toBe('accepted');
      await expect(speaking).toHaveCount(1);
      await expect(speaking).toHaveText('Accepted.');
    }
    await unfold(page, 'typed');
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await expect(speaking).toHaveText(/^Taken back: /);
    await page.getByRole('button', { name: 'Redo', exact: true }).click();
    await check(page);
    await page.getByRole('button', { name: 'Finish' }).click();
    await expect(speaking).toHaveText(/^Finished: every step was done\./);
    await expect(speaking).toHaveCount(1);
  });

  for (const reducedMotion of ['reduce', 'no-preference'] as const)
    test(`a demonstration with motion ${reducedMotion === 'reduce' ? 'reduced jumps' : 'allowed moves'} from command to command`, async ({
      page,
    }) => {
      await page.emulateMedia({ reducedMotion });
      await enter(page);
      await openAttempt(page, cutShort(sample, stretchOf(sample, 'connectors').to));
      await check(page);
      await page.getByRole('button', { name: 'Next step' }).click();
      await page.getByRole('button', { name: 'Show me how, on my own table' }).click();
      await page.getByRole('region', { name: 'Demonstration' }).waitFor();
      // Every picture until the demonstration is over, looked at each time the browser draws.
      const pictures = await page.evaluate(
        () =>
          new Promise<number>((resolve) => {
            const seen = new Set<string>();
            const look = (): void => {
              const table = document.querySelector('.desk svg > g')!;
              seen.add(
                [...table.querySelectorAll('path')]
                  .map((path) => `${path.getAttribute('d')} ${path.parentElement?.getAttribute('transform')}`)
                  .join(),
              );
              const over = [...document.querySelectorAll('button')].some(
                (button) => button.textContent?.trim() === 'Play',
              );
              if (over) resolve(seen.size);
              else requestAnimationFrame(look);
            };
            look();
          }),
      );
      // The scissors, then the turn: two pictures, and the one before; or the many of a movement.
      if (reducedMotion === 'reduce') expect(pictures).toBeLessThanOrEqual(3);
      else expect(pictures).toBeGreaterThan(20);
    });

  for (const [name, use] of [
    ['desk', { viewport: { width: 1440, height: 900 } }],
    ['phone', { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true }],
  ] as const)
    test.describe(name, () => {
      test.use(use);
      test(`${name}: whatever is pressed measures 24 px or more, handles at any zoom`, async ({ page }) => {
        test.setTimeout(120_000);
        await enter(page);
        await openAttempt(page, sample);
        for (const { id } of lesson.steps) {
          await stepButton(page, id).click();
          await check(page);
          await unfold(page, 'typed');
          expect(await small(page, CONTROLS), id).toEqual([]);
          for (const zoom of ['+', '+', '+', '0', '-', '-', '-']) {
            await page.locator('.desk svg').evaluate((svg: SVGSVGElement) => svg.focus());
            await page.keyboard.press(zoom);
            expect(await small(page, '[data-target] .hit'), `${id}, ${zoom}`).toEqual([]);
          }
        }
      });
    });

  test('the page is scrolled sideways on no screen, down to 320 px', async ({ page }) => {
    // WCAG 1.4.10 (read); the table itself is a drawing that needs two dimensions, the list of steps scrolls in itself.
    const wide = () => page.evaluate(() => document.scrollingElement!.scrollWidth);
    await page.setViewportSize({ width: 320, height: 640 });
    await page.goto('/');
    expect(await wide(), 'home').toBeLessThanOrEqual(320);
    await enter(page);
    await openAttempt(page, sample);
    for (const id of ['read-the-block', 'style-line', 'leftover', 'walk-the-seams']) {
      await stepButton(page, id).click();
      await unfold(page, 'typed');
      await unfold(page, 'twin');
      await check(page);
      for (const width of [1440, 820, 390, 320]) {
        await page.setViewportSize({ width, height: width === 820 ? 1180 : 800 });
        expect(await wide(), `${id}, ${width}`).toBeLessThanOrEqual(width);
        const high = await page.evaluate(() => document.scrollingElement!.scrollHeight - innerHeight);
        expect(high, `${id}, ${width}`).toBe(0);
      }
      expect(
        await page.locator('.panel').evaluate((panel) => panel.scrollWidth - panel.clientWidth),
        id,
      ).toBe(0);
    }
  });
});

const CONTROLS = 'button, summary, select, input:not(.visually-hidden), .tools label, header a';
const COLOURS = [
  ...['desk', 'paper', 'panel', 'ink', 'ink-soft', 'pencil', 'accent', 'focus', 'wrong', 'right', 'note'],
  ...['cloth-upper', 'cloth-lower'],
];

/** What of these is shown and measures less than 24 px either way; a box inside a label of that size is pressed by its label. */
const small = (page: Page, css: string): Promise<string[]> =>
  page.locator(css).evaluateAll((all) =>
    all.flatMap((one) => {
      const { width, height } = (
        one.matches('label input') ? one.closest('label')! : one
      ).getBoundingClientRect();
      const shown = one.checkVisibility() && width > 0;
      return shown && (width < 23.9 || height < 23.9)
        ? [`${one.tagName} ${one.textContent?.trim().slice(0, 30)} ${width} x ${height}`]
        : [];
    }),
  );

/** What has the keyboard, and what is wrong with how that is shown. Runs in the page and only looks. */
function stopHere(): { name: string; faults: string[] } | undefined {
  const now = document.activeElement;
  if (!now || now === document.body) return undefined;
  const target = now.getAttribute('data-target');
  const words = (now.textContent ?? '').trim().replace(/\s+/g, ' ').slice(0, 40);
  const name =
    target === null
      ? `${now.tagName.toLowerCase()} ${now.id || now.getAttribute('aria-label') || words || now.getAttribute('value')}`
      : `handle ${target}`;
  const faults: string[] = [];
  // A radio button is shown by the outline of its label.
  const shows = now.matches('.tools input') ? now.closest('label')! : now;
  const style = getComputedStyle(target === null ? shows : now.querySelector('.ring')!);
  const width = Number.parseFloat(target === null ? style.outlineWidth : style.strokeWidth);
  const drawn = target === null ? style.outlineStyle !== 'none' : style.stroke !== 'none';
  if (!drawn || width < 2) faults.push(`its focus is drawn ${width} px wide`);
  const box = now.getBoundingClientRect();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const top = document.elementFromPoint(x, y);
  const free =
    top !== null && (now.contains(top) || top.contains(now) || now.closest('label')?.contains(top));
  // Handles may lie on each other; the one with the keyboard is still seen beside the other.
  if (!free && !(target !== null && top?.closest('[data-target]')))
    faults.push(`it is hidden by ${top?.tagName}`);
  return { name, faults };
}

const channels = (colour: string): number[] =>
  [1, 3, 5].map((i) => Number.parseInt(colour.slice(i, i + 2), 16));
const mixed = (a: string, b: string, part: number): string =>
  '#' +
  channels(a)
    .map((c, i) =>
      Math.round(c * part + channels(b)[i]! * (1 - part))
        .toString(16)
        .padStart(2, '0'),
    )
    .join('');

/** Contrast of two colours written "#rrggbb": WCAG's relative luminance (read). */
function ratio(a: string, b: string): number {
  const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light! + 0.05) / (dark! + 0.05);
}
function luminance(colour: string): number {
  const [r, g, b] = channels(colour).map((whole) => {
    const c = whole / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}
