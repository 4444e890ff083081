import AxeBuilder from '@axe-core/playwright';
import { readFileSync } from 'node:fs';
import { expect, test, type Page } from '@playwright/test';
import '../../src/lib/recipe/commands/index.ts';
import { blockOf } from '../../src/lib/lessons/block.ts';
import { drillLesson } from '../../src/lib/lessons/drills/lesson.ts';
import { fromFragment } from '../../src/lib/lessons/drills/link.ts';
import { variantOf } from '../../src/lib/lessons/drills/variant.ts';
import { workedLesson } from '../../src/lib/lessons/worked/index.ts';
import { toText } from '../../src/lib/recipe/save.ts';
import type { Attempt, Command } from '../../src/lib/recipe/types.ts';
import { drillWords } from '../../src/lib/strings/drills.ts';
import { errorsOf } from './support/attempt.ts';

const golden = (path: string): string => readFileSync(`lessons/${path}.attempt.json`, 'utf8');
/** A waist dart moved to the side: right, and with the pin slipped in the fourth of its commands. */
const PASS = golden('waist-to-side/04-prove/attempts/pass-on-the-block');
const SLIPPED = golden('waist-to-side/03-move/attempts/fail-dart-moved-pivot-slipped');
/** The working dart, the first command, was drawn to the sewn point. */
const SEWN = golden('waist-to-shoulder/04-prove/attempts/fail-angle-kept-sum-worked-from-the-sewn-point');

/** A drill's attempt: what its link makes, worked, with the commands edited. */
function drillText(
  fragment: string,
  edit: (all: readonly Command[]) => readonly Command[] = (c) => c,
): string {
  const parsed = fromFragment(fragment);
  if ('problem' in parsed) throw new Error(fragment);
  const lesson = drillLesson(variantOf(parsed.ok), drillWords('mm'));
  const attempt: Attempt = {
    format: 'pin-and-pivot/recipe',
    version: 1,
    lesson: { id: lesson.id, content: lesson.content },
    block: blockOf(lesson),
    fabric: parsed.ok.fabric,
    seed: 0,
    commands: edit(workedLesson(lesson, parsed.ok.fabric).commands),
  };
  return toText(attempt);
}

const edited = (text: string, edit: (attempt: Record<string, unknown>) => object): string =>
  JSON.stringify(edit(JSON.parse(text) as Record<string, unknown>));

async function offerFile(page: Page, text: string): Promise<void> {
  const file = { name: 'a.attempt.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.getByLabel('Attempt file').setInputFiles(file);
}
async function paste(page: Page, text: string): Promise<void> {
  await page.getByLabel('Or paste its text').fill(text);
  await page.getByRole('button', { name: 'Open the text' }).click();
}
async function drop(page: Page, text: string): Promise<void> {
  await page.evaluate((content) => {
    const data = new DataTransfer();
    data.items.add(new File([content], 'a.attempt.json', { type: 'application/json' }));
    document.body.dispatchEvent(
      new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }),
    );
  }, text);
}
const slider = (page: Page) => page.getByRole('slider', { name: 'Commands' });
const verdict = (page: Page) => page.locator('[data-verdict]');
const origin = (page: Page) => page.locator('[data-origin]');
const position = async (page: Page): Promise<number> => Number(await slider(page).inputValue());
const rail = (page: Page, step: string) => page.locator(`nav button[data-step="${step}"]`);
/** Every path on the table as it is drawn. */
const drawn = (page: Page): Promise<string> =>
  page
    .locator('.desk svg')
    .evaluate((svg) =>
      [...svg.querySelectorAll('[data-piece] path')].map((path) => path.getAttribute('d')).join(' '),
    );

test.beforeEach(async ({ page }) => {
  await page.goto('/attempt/');
  // The page is drawn before it listens; it sets its colours once it does.
  await page.waitForFunction(() => document.documentElement.dataset['theme'] !== undefined);
});

for (const [how, open] of [
  ['from a file', offerFile],
  ['from pasted text', paste],
  ['by drop', drop],
] as const)
  test(`a right attempt of a lesson opens ${how}, on its end, and every step is accepted`, async ({
    page,
  }) => {
    const errors = errorsOf(page);
    await open(page, PASS);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Attempt: Waist dart to the side seam');
    await expect(slider(page)).toHaveValue('5');
    await expect(page.getByText('4 of 4 steps accepted, marked again')).toBeVisible();
    for (const step of ['working-dart', 'slash-line', 'move', 'prove']) {
      await rail(page, step).click();
      await expect(rail(page, step)).toHaveAttribute('aria-current', 'step');
      await expect(verdict(page)).toHaveAttribute('data-verdict', 'accepted');
    }
    await expect(origin(page)).toHaveCount(0);
    expect(errors).toEqual([]);
  });

test('the command with which it began is marked, and each finding says what of it stems from there', async ({
  page,
}) => {
  await offerFile(page, SLIPPED);
  await expect(origin(page)).toHaveAttribute('data-origin', 'began');
  // The pin stood 14 and 9 mm beside the bust point (the golden attempt's own numbers): 16.6 mm (Pythagoras).
  await expect(origin(page)).toContainText(
    'command 4, in “Slash, and close the waist dart”: Turn the freed part about a point 16.6 mm from the right bust point',
  );
  await expect(page.getByText('it began here')).toBeVisible();
  await expect(verdict(page)).toHaveAttribute('data-verdict', 'needsWork');
  const off = page.locator('li.wrong');
  await expect(off).toHaveCount(3);
  for (const finding of await off.all())
    await expect(finding.locator('.more')).toHaveText(/^All of it stems from there: [+−][\d.]+ mm\.$/);

  // The mistake of the first command shows in three steps, and in each what stems from it.
  await page.getByRole('button', { name: 'Open another' }).click();
  await offerFile(page, SEWN);
  await expect(origin(page)).toContainText('command 1, in ');
  await page.getByRole('button', { name: 'Go to it' }).click();
  await expect(slider(page)).toHaveValue('1');
  for (const step of ['working-dart', 'slash-line', 'prove']) {
    await rail(page, step).click();
    await expect(page.locator('li.wrong .more').first()).toContainText('All of it stems from there');
  }
});

test('a turn that stopped short began nowhere: it can be gone on with', async ({ page }) => {
  await offerFile(page, golden('waist-to-side/03-move/attempts/fail-dart-moved-residual-not-far-enough'));
  await expect(origin(page)).toHaveAttribute('data-origin', 'goes-on');
  await expect(page.getByText('it began here')).toHaveCount(0);
});

test('it is scrubbed by keys and by pointer, step for step, and told', async ({ page }) => {
  await offerFile(page, PASS);
  await expect(slider(page)).toHaveValue('5');
  const end = await drawn(page);
  await slider(page).focus();
  await page.keyboard.press('Home');
  await expect(slider(page)).toHaveValue('0');
  await expect(slider(page)).toHaveAttribute('aria-valuetext', /^0 of 5.*before the first command/);
  const bare = await drawn(page);
  expect(bare).not.toBe(end);
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(slider(page)).toHaveAttribute(
    'aria-valuetext',
    /^2 of 5, Draw the slash line: Draw the line of the slash from a place at [\d.]+ % of the right side seam to the right bust point/,
  );
  await expect(rail(page, 'slash-line')).toHaveAttribute('aria-current', 'step');
  // The buttons tell it to who hears the page.
  await page.getByRole('button', { name: 'Forward' }).click();
  await expect(page.locator('[data-announcer]')).toContainText('Cut the slash up to the end of its line');
  await expect(slider(page)).toHaveValue('3');
  await page.getByRole('button', { name: 'Back' }).click();
  await expect(slider(page)).toHaveValue('2');

  const box = (await slider(page).boundingBox())!;
  expect(box.height).toBeGreaterThanOrEqual(24);
  const at = (part: number) => [box.x + 10 + (box.width - 20) * part, box.y + box.height / 2] as const;
  await page.mouse.move(...at(2 / 5));
  await page.mouse.down();
  await page.mouse.move(...at(3.2 / 5), { steps: 5 });
  expect(await position(page)).toBe(3);
  await page.mouse.move(...at(1), { steps: 5 });
  await page.mouse.up();
  expect(await position(page)).toBe(5);
  expect(await drawn(page)).toBe(end);
});

test('it plays to its end and can be paused; with reduced motion nothing moves in between', async ({
  page,
}) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await offerFile(page, SLIPPED);
  await page.getByRole('button', { name: 'Play' }).click();
  await page.getByRole('button', { name: 'Pause' }).click();
  const paused = await position(page);
  await page.getByRole('button', { name: 'Play' }).click();
  const pictures = await page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        const seen = new Set<string>();
        const look = (): void => {
          const paths = [...document.querySelectorAll('.desk svg > g path')];
          seen.add(
            paths.map((p) => `${p.getAttribute('d')} ${p.parentElement?.getAttribute('transform')}`).join(),
          );
          const over = [...document.querySelectorAll('button')].some((b) => b.textContent?.trim() === 'Play');
          if (over) resolve(seen.size);
          else requestAnimationFrame(look);
        };
        look();
      }),
  );
  expect(paused).toBeLessThan(4);
  await expect(slider(page)).toHaveValue('4');
  // One picture for each of four commands, the one before them and the one with the findings.
  expect(pictures).toBeLessThanOrEqual(6);
});

for (const [how, open] of [
  ['a file', offerFile],
  ['pasted text', paste],
] as const)
  test(`a drill's attempt opens from ${how} without its link; an edited one gets the mark its commands deserve`, async ({
    page,
  }) => {
    const right = drillText('slash.77.woven.usual.3');
    await open(page, right);
    await expect(page.getByText('3 of 3 steps accepted, marked again')).toBeVisible();
    await expect(page.getByRole('link', { name: 'Work on it yourself' })).toHaveAttribute(
      'href',
      /practice\/?#slash\.77\.woven\.usual\.3$/,
    );
    const wrong = drillText('slash.77.woven.usual.3', (all) =>
      all.map((c) => (c.do === 'cut-slash' ? { ...c, past: 5 } : c)),
    );
    await page.getByRole('button', { name: 'Open another' }).click();
    await open(
      page,
      edited(wrong, (attempt) => ({ ...attempt, verdict: 'accepted', mark: { verdict: 'accepted' } })),
    );
    await expect(page.getByText('What this file says of its own mark was not read.')).toBeVisible();
    await expect(page.getByText('2 of 3 steps accepted, marked again')).toBeVisible();
    await expect(verdict(page)).toHaveAttribute('data-verdict', 'needsWork');
    await expect(origin(page)).toContainText('through the end of its line, 5 mm past it');
  });

test('an attempt of one step of a drill says so: its kind, which step, and what was given', async ({
  page,
}) => {
  const part = page.locator('[data-of-drill]');
  await offerFile(page, drillText('4.finish.41.woven.usual.1.any.5'));
  await expect(part).toHaveText(
    /^One step of a drill, “Cap the dart”\. Its kind: Back off, true and cap\. Given before it, and not the work of whoever made the attempt: (“[^”]+”, )*“Draw the sewn point”\.$/,
  );
  await page.getByRole('button', { name: 'Open another' }).click();
  await offerFile(page, drillText('slash.77.woven.usual.3'));
  await expect(page.getByText('3 of 3 steps accepted, marked again')).toBeVisible();
  await expect(part).toHaveCount(0);
  // Who looks at it sees what was asked, and on which terms.
  await expect(page.locator('[data-asks]')).toHaveText(
    /^What it asks: .* mm .*For a woven cloth, marked within the usual tolerance, with 3 hints a step\.$/,
  );
});

test('what cannot be used is refused with path, expected and found, and the table stays', async ({
  page,
}) => {
  const errors = errorsOf(page);
  const alert = page.getByRole('alert');
  await paste(page, PASS.slice(0, 700));
  await expect(alert).toContainText('nothing was changed');
  await offerFile(page, PASS);
  await expect(slider(page)).toHaveValue('5');
  await expect(alert).toHaveCount(0);
  const table = await drawn(page);
  const drill = drillText('slash.77.woven.usual.3');
  const bad: readonly (readonly [name: string, text: string, says: RegExp])[] = [
    ['empty', '', /the file: expected .+, found/],
    ['truncated', PASS.slice(0, 700), /the file: expected .+, found .+line \d+/],
    ['newer', edited(PASS, (a) => ({ ...a, version: 9 })), /version: expected 1, found 9, from a newer/],
    [
      'of a newer content',
      edited(PASS, (a) => ({ ...a, lesson: { id: 'waist-to-side', content: 99 } })),
      /lesson\.content: expected \d+ at most, found 99/,
    ],
    [
      'of no lesson',
      edited(PASS, (a) => ({ ...a, lesson: { id: 'another-lesson', content: 1 } })),
      /lesson\.id: expected a lesson of the course, or a drill, found another-lesson/,
    ],
    [
      'of no drill',
      edited(drill, (a) => ({ ...a, lesson: { id: 'drill-slash-77-silk-usual-3', content: 1 } })),
      /lesson\.id: expected .+, found drill-slash-77-silk/,
    ],
    [
      'a drill on another body',
      edited(drill, (a) => {
        const block = a['block'] as { figure: string };
        return { ...a, block: { ...block, figure: block.figure === 'F1' ? 'F2' : 'F1' } };
      }),
      /block\.figure: expected F\d, found F\d/,
    ],
    [
      'own measures',
      edited(PASS, (a) => ({ ...a, block: { measures: { bust: 911, waist: 733, napeToWaist: 402 } } })),
      /block: expected a demo figure.+, found own measures/,
    ],
    [
      'markup for a number',
      PASS.replace(/"past": 0/, '"past": "<img src=x onerror=\\"window.hacked = 1\\">"'),
      /past: expected .+, found .*<img/,
    ],
    ['a prototype', PASS.replace('{', '{"__proto__": {"polluted": true}, '), /__proto__: expected .+, found/],
    ['too large', PASS + ' '.repeat(2_000_001), /expected a file of at most 2000000 bytes, found \d+ bytes/],
  ];
  await page.getByRole('button', { name: 'Open another' }).click();
  for (const [name, text, says] of bad)
    await test.step(name, async () => {
      await offerFile(page, text);
      await expect(alert).toContainText('The attempt was not opened; the table is as it was.');
      await expect(alert).toContainText(says);
      await expect(alert).not.toContainText(/911|733|402/);
      expect(await drawn(page)).toBe(table);
      await page.getByRole('button', { name: 'All right' }).click();
    });
  expect(await page.evaluate(() => 'hacked' in window || 'polluted' in {})).toBe(false);
  // The one file that is asked for and is not there is the lesson that does not exist.
  expect(errors.filter((error) => !error.includes('another-lesson'))).toEqual([]);
});

test('words from a file are shown as words, never run as markup', async ({ page }) => {
  const name = '<img src=x onerror="window.hacked=1">';
  const text = golden('slanted-seam/12-label-and-grain/attempts/pass-knit');
  await offerFile(
    page,
    edited(text, (attempt) => ({
      ...attempt,
      commands: (attempt['commands'] as { do: string }[]).map((c) => (c.do === 'label' ? { ...c, name } : c)),
    })),
  );
  await page.getByText('All commands in words').click();
  await expect(page.getByText(`Label: ${name}`).first()).toBeVisible();
  await expect(page.locator('img')).toHaveCount(0);
  expect(await page.evaluate(() => 'hacked' in window)).toBe(false);
});

test.describe('the learner’s own attempt', () => {
  async function enter(page: Page): Promise<void> {
    await page.goto('/lesson/waist-to-side/');
    await page.getByRole('button', { name: 'Start at once' }).click();
    await page.getByRole('button', { name: 'Check', exact: true }).waitFor();
  }
  async function open(page: Page, text: string): Promise<void> {
    await offerFile(page, text);
    await rail(page, 'move').and(page.locator('[aria-current="step"]')).waitFor();
  }

  test('is copied as text, and opened from that text by somebody else', async ({ page, context }) => {
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await enter(page);
    await open(page, SLIPPED);
    await page.getByText('My work').click();
    await page.getByRole('button', { name: 'Copy as text' }).click();
    await expect(page.locator('.message')).toContainText('copied as text');
    const text = await page.evaluate(() => navigator.clipboard.readText());
    expect(JSON.parse(text)).toEqual(JSON.parse(SLIPPED));
    await page.goto('/attempt/');
    await paste(page, text);
    await expect(slider(page)).toHaveValue('4');
  });

  test('on own measures is not copied', async ({ page, context }) => {
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await enter(page);
    await page.evaluate(() => navigator.clipboard.writeText('before'));
    // The measures are those of demo figure F2 (pattern/figures).
    const measures = { bust: 840, waist: 660, napeToWaist: 380 };
    await open(
      page,
      edited(SLIPPED, (a) => ({ ...a, block: { measures, form: (a['block'] as { form: string }).form } })),
    );
    await page.getByText('My work').click();
    await page.getByRole('button', { name: 'Copy as text' }).click();
    await expect(page.locator('.message')).toContainText('your own measures');
    expect(await page.evaluate(() => navigator.clipboard.readText())).toBe('before');
  });

  test('is gone through in the same view, and the table is as it was after that', async ({ page }) => {
    await enter(page);
    await open(page, SLIPPED);
    const table = await drawn(page);
    await page.getByText('My work').click();
    await page.getByRole('button', { name: 'Go through what I did' }).click();
    await expect(slider(page)).toHaveValue('4');
    await page.getByRole('button', { name: 'Back', exact: true }).click();
    await expect(slider(page)).toHaveValue('3');
    await page.getByRole('button', { name: 'To my own table' }).click();
    await expect(slider(page)).toHaveCount(0);
    expect(await drawn(page)).toBe(table);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await expect(page.getByText('What was done in this step (1)')).toBeVisible();
  });

  test('where a finding began is one press from the check, in a lesson and in a drill', async ({ page }) => {
    await enter(page);
    // The cut went through the bust point; the turn after it was right.
    const through = edited(SLIPPED, (a) => ({
      ...a,
      commands: (a['commands'] as Command[]).map((c) =>
        c.do === 'cut-slash'
          ? { ...c, past: 3 }
          : c.do === 'turn'
            ? { ...c, about: { landmark: 'right/bust-point' } }
            : c,
      ),
    }));
    await open(page, through);
    await page.getByRole('button', { name: 'Check', exact: true }).click();
    await page.getByRole('button', { name: 'Where did it begin?' }).click();
    await expect(slider(page)).toHaveValue('3');
    await expect(origin(page)).toContainText('through the end of its line, 3 mm past it');

    await page.goto('/practice/#slash.77.woven.usual.3');
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.getByRole('button', { name: 'Check', exact: true }).waitFor();
    await open(
      page,
      drillText('slash.77.woven.usual.3', (all) =>
        all.map((c) => (c.do === 'turn' ? { ...c, about: { landmark: 'right/bust-point', dx: 20 } } : c)),
      ),
    );
    await page.getByRole('button', { name: 'Check', exact: true }).click();
    await page.getByRole('button', { name: 'Where did it begin?' }).click();
    await expect(origin(page)).toContainText('about a point 20 mm from the right bust point');
    const known = (JSON.parse(drillText('slash.77.woven.usual.3')) as Attempt).commands;
    await expect(slider(page)).toHaveValue(`${known.findIndex((c) => c.do === 'turn') + 1}`);
  });
});

test('the page asks for little until an attempt is opened', async ({ page }) => {
  await page.goto('/attempt/');
  await page.getByRole('button', { name: 'Open a file' }).waitFor();
  const kinds = await page.evaluate(() =>
    performance
      .getEntriesByType('resource')
      .map((entry) => entry as PerformanceResourceTiming)
      .filter(({ name }) => name.endsWith('.js'))
      .reduce((sum, { decodedBodySize }) => sum + decodedBodySize, 0),
  );
  // Less than half of what the table alone takes; not minified any further than the build does (ours).
  expect(kinds).toBeLessThan(130_000);
});

for (const [name, viewport] of [
  ['desk', { width: 1440, height: 900 }],
  ['phone', { width: 390, height: 844 }],
] as const)
  for (const colorScheme of ['light', 'dark'] as const)
    test.describe(`${name}, ${colorScheme}`, () => {
      test.use({ viewport, colorScheme });
      test('the page holds to the rules of axe, is never scrolled sideways, and its controls are large enough', async ({
        page,
      }) => {
        // axe-core's rules for WCAG 2.0 to 2.2, A and AA (read: the tags of the installed version); 24 px is WCAG 2.5.8 (read).
        const clean = async (where: string): Promise<void> => {
          const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
          const { violations } = await new AxeBuilder({ page }).withTags(tags).analyze();
          expect
            .soft(
              violations.map(({ id, nodes }) => [id, nodes[0]?.target]),
              where,
            )
            .toEqual([]);
          const small = await page
            .locator('button, summary, textarea, input[type="range"], header a.work')
            .evaluateAll((all) =>
              all.flatMap((one) => {
                const { width, height } = one.getBoundingClientRect();
                return one.checkVisibility() && (width < 23.9 || height < 23.9)
                  ? [`${one.tagName} ${one.className} ${one.textContent?.trim().slice(0, 30)}`]
                  : [];
              }),
            );
          expect.soft(small, where).toEqual([]);
          const wide = await page.evaluate(() => document.scrollingElement!.scrollWidth);
          expect.soft(wide, where).toBeLessThanOrEqual(viewport.width);
        };
        await clean('empty');
        await offerFile(page, SLIPPED);
        await expect(origin(page)).toHaveAttribute('data-origin', 'began');
        await clean('watching');
        await page.getByRole('button', { name: 'Open another' }).click();
        await offerFile(page, '{');
        await page.getByRole('alert').waitFor();
        await clean('refused');
      });
    });

test('help that was taken travels with the attempt, as what its file says, apart from the marks', async ({
  page,
}) => {
  const errors = errorsOf(page);
  await page.goto('/lesson/waist-to-side/');
  await page.getByRole('button', { name: 'Start at once' }).click();
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  await page.getByRole('button', { name: 'A hint', exact: true }).click();
  await page.getByRole('button', { name: 'Show me how, on my own table' }).click();
  await page.getByRole('button', { name: 'To my own table' }).click();
  await page.locator('header summary').click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save my attempt' }).click(),
  ]);
  const text = readFileSync(await download.path(), 'utf8');
  expect(JSON.parse(text)).toMatchObject({ help: [{ step: 'working-dart', hints: 1, shown: true }] });

  await page.goto('/attempt/');
  await page.waitForFunction(() => document.documentElement.dataset['theme'] !== undefined);
  await paste(page, text);
  await expect(page.locator('[data-help]')).toHaveText(
    'The file says: “Draw the working dart” with 1 hint, after seeing it worked. That is its own word, and changes no mark.',
  );
  // An older file says nothing, and nothing is said of it.
  await page.getByRole('button', { name: 'Open another' }).click();
  await paste(page, PASS);
  await expect(page.getByText('4 of 4 steps accepted')).toBeVisible();
  await expect(page.locator('[data-help]')).toHaveCount(0);
  expect(errors).toEqual([]);
});
