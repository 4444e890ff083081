import { expect, test, type Page } from '@playwright/test';
import { Desk } from './support/table.ts';

// Before everything was fetched once a step may be gone to whose tools are not there: the service worker is kept out.
test.use({ serviceWorkers: 'block' });

/** Keeps every file back whose text has that in it; tells how often one was asked for. */
async function keepBack(page: Page, what: RegExp): Promise<readonly string[]> {
  const asked: string[] = [];
  await page.route('**/*.js', async (route) => {
    const response = await route.fetch();
    if (!what.test(await response.text())) return route.fulfill({ response });
    asked.push(route.request().url());
    return route.abort();
  });
  return asked;
}

/** Presses "Try again" without and then with a network: it is said again, and goes on. */
async function tryTwice(page: Page, asked: readonly string[]): Promise<void> {
  const said = page.getByRole('alert');
  const again = page.getByRole('button', { name: 'Try again' });
  await expect(said).toContainText('could not be fetched');
  const before = asked.length;
  await again.click();
  await expect.poll(() => asked.length).toBeGreaterThan(before);
  await expect(said).toContainText('could not be fetched');
  // What was pressed is gone: the keyboard waits where it can be tried again.
  await expect(again).toBeFocused();
  await page.unrouteAll({ behavior: 'wait' });
  await page.keyboard.press('Enter');
  await expect(said).toHaveCount(0);
}

test('when the tools of the next step cannot be fetched it is said, and trying again goes on', async ({
  page,
}) => {
  const desk = new Desk(page);
  await desk.open('waist-to-side');
  await desk.push('Start at once');
  await desk.drag('tip:right/waist-dart', 'to:right/waist-dart');
  await desk.hasDone(1);
  // The file with the next step's tool does not come; everything else does.
  const asked = await keepBack(page, /\bid:\s*[`'"]draw-slash/);
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  await expect(page.locator('[data-verdict="accepted"]')).toBeVisible();
  await page.getByRole('button', { name: 'Next step', exact: true }).click();
  const said = page.locator('.message', { hasText: 'could not be fetched' });
  await expect(said).toBeVisible();
  await expect(page.getByRole('heading', { level: 2 })).toContainText('1.');
  // Still no network: it is said again.
  await said.getByRole('button', { name: 'Try again' }).click();
  await expect.poll(() => asked.length).toBeGreaterThan(2);
  await expect(said).toBeVisible();
  await page.unrouteAll({ behavior: 'wait' });
  await said.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByRole('heading', { level: 2 })).toContainText('2.');
  await expect(said).toHaveCount(0);
});

test('when what marks cannot be fetched it is said, and trying again marks', async ({ page }) => {
  const desk = new Desk(page);
  await desk.open('waist-to-side');
  await desk.push('Start at once');
  await desk.drag('tip:right/waist-dart', 'to:right/waist-dart');
  await desk.hasDone(1);
  const asked = await keepBack(page, /darts-extended\/tip/);
  const check = page.getByRole('button', { name: 'Check', exact: true });
  await check.click();
  const said = page.locator('.message', { hasText: 'What marks your work could not be fetched' });
  await expect(said).toBeVisible();
  await expect(page.locator('[data-verdict]')).toHaveCount(0);
  // Still no network: it is said again.
  const before = asked.length;
  await said.getByRole('button', { name: 'Try again' }).click();
  await expect.poll(() => asked.length).toBeGreaterThan(before);
  await expect(said).toBeVisible();
  await page.unrouteAll({ behavior: 'wait' });
  await said.getByRole('button', { name: 'Try again' }).click();
  await expect(page.locator('[data-verdict="accepted"]')).toBeVisible();
  await expect(said).toHaveCount(0);
  // What was pressed is gone: the keyboard goes on from the mark.
  await expect(page.locator(':focus').getByText('Accepted')).toBeVisible();
});

test('when what zooms cannot be fetched the buttons enlarge all the same', async ({ page }) => {
  const asked = await keepBack(page, /scaleExtent/);
  await page.goto('/lesson/waist-to-side/');
  await page.getByRole('button', { name: 'Start at once' }).click();
  const piece = page.locator('svg [data-piece]').first();
  const width = async () => (await piece.boundingBox())!.width;
  await piece.waitFor();
  const whole = await width();
  await page.getByRole('button', { name: 'Nearer' }).click();
  await expect.poll(async () => (await width()) / whole).toBeCloseTo(1.4, 1);
  expect(asked.length).toBeGreaterThan(0);
  await page.getByRole('button', { name: 'Farther' }).click();
  await expect.poll(async () => (await width()) / whole).toBeCloseTo(1, 1);
});

test('when the block of a drill cannot be fetched it is said, and trying again begins it', async ({
  page,
}) => {
  let asked = 0;
  await page.route('**/practice/blocks/**', (route) => ((asked += 1), route.abort()));
  await page.goto('/practice/#slash.4711.woven.usual.3');
  const said = page.getByRole('alert');
  await expect(said).toContainText('could not be fetched');
  // Still no network: it is said again.
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect.poll(() => asked).toBe(2);
  await expect(said).toBeVisible();
  await page.unroute('**/practice/blocks/**');
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByRole('button', { name: 'Begin', exact: true })).toBeVisible();
  await expect(said).toHaveCount(0);
});

test('when the table cannot be fetched once a lesson is begun it is said, and trying again begins it', async ({
  page,
}) => {
  const asked = await keepBack(page, /Leave it, flagged/);
  await page.goto('/lesson/waist-to-side/');
  await page.getByRole('button', { name: 'Start at once' }).click();
  await tryTwice(page, asked);
  await expect(page.getByRole('button', { name: 'Check', exact: true })).toBeVisible();
});

test('when the first tools of a drill cannot be fetched it is said, and trying again begins it', async ({
  page,
}) => {
  const asked = await keepBack(page, /\bid:\s*[`'"]extend-dart/);
  await page.goto('/practice/#slash.4711.woven.usual.3');
  await page.getByRole('button', { name: 'Begin', exact: true }).click();
  await tryTwice(page, asked);
  await expect(page.getByRole('button', { name: 'Check', exact: true })).toBeVisible();
});

test('when the desk of the free bench cannot be fetched it is said, and trying again lays the work on it', async ({
  page,
}) => {
  const asked = await keepBack(page, /All works/);
  await page.goto('/bench/');
  await page.getByRole('button', { name: 'Lay it on the bench' }).click();
  await tryTwice(page, asked);
  await expect(page.locator('svg [data-piece]').first()).toBeVisible();
});

test('when what marks a drill cannot be fetched it is said, and trying again marks it and goes on', async ({
  page,
}) => {
  const desk = new Desk(page);
  await page.goto('/practice/#2.line.4711.woven.usual.3.full');
  // The rules of the drill and the texts of its later steps do not come; everything else does.
  const asked = await keepBack(page, /stand otherwise/);
  await page.getByRole('button', { name: 'Begin', exact: true }).click();
  await expect(page.getByText('It passes the bust point on the side of centre front')).toBeVisible();
  await desk.drag('start:right/shoulder', 'start:right/waist');
  await desk.hasDone(1);
  const said = page.locator('.message', { hasText: 'could not be fetched' });
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  await expect(said).toContainText('Your work is kept');
  await expect(page.locator('[data-verdict]')).toHaveCount(0);
  // Still no network: it is said again.
  const before = asked.length;
  await said.getByRole('button', { name: 'Try again' }).click();
  await expect.poll(() => asked.length).toBeGreaterThan(before);
  await expect(said).toBeVisible();
  // Nor can the solution be shown.
  const marking = asked.length;
  await page.getByRole('button', { name: 'Show me how, on my own table' }).click();
  await expect.poll(() => asked.length).toBeGreaterThan(marking);
  await expect(said).toBeVisible();
  await page.unrouteAll({ behavior: 'wait' });
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  await expect(page.locator('[data-verdict="needsWork"]')).toBeVisible();
  await expect(said).toHaveCount(0);
  await page.getByRole('button', { name: 'Leave it, flagged' }).click();
  await expect(page.getByRole('heading', { level: 2 })).toContainText('2. Mark the notches');
  await expect(page.getByText('mark its notches: one above the place nearest')).toBeVisible();
});

test('when what marks cannot be fetched for a file that is opened it is said, and trying again opens it', async ({
  page,
}) => {
  const desk = new Desk(page);
  await desk.open('waist-to-side');
  await desk.push('Start at once');
  await page.locator('svg [data-piece]').first().waitFor();
  const asked = await keepBack(page, /darts-extended\/tip/);
  await page
    .getByLabel('Attempt file')
    .setInputFiles('lessons/waist-to-side/03-move/attempts/pass-until-the-legs-meet.attempt.json');
  const said = page.locator('.message', { hasText: 'What this needs could not be fetched' });
  await expect(said).toBeVisible();
  await expect(page.locator('[data-announcer]')).toContainText('could not be fetched');
  await desk.hasDone(0);
  // Still no network: it is said again.
  const before = asked.length;
  await said.getByRole('button', { name: 'Try again' }).click();
  await expect.poll(() => asked.length).toBeGreaterThan(before);
  await expect(said).toBeVisible();
  await page.unrouteAll({ behavior: 'wait' });
  await said.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByRole('heading', { level: 2 })).toContainText('3.');
  await expect(said).toHaveCount(0);
});

test('when what makes the practice sheet cannot be fetched it is said, and trying again saves it', async ({
  page,
}) => {
  const saved = () => page.waitForEvent('download');
  const desk = new Desk(page);
  await desk.open('waist-to-side');
  await desk.push('Start at once');
  await page.locator('svg [data-piece]').first().waitFor();
  await keepBack(page, /-practice\.html/);
  await page.getByText('My work', { exact: true }).click();
  await page.getByRole('button', { name: 'Save the practice sheet' }).click();
  const said = page.locator('.message', { hasText: 'What this needs could not be fetched' });
  await expect(said).toBeVisible();
  await page.unrouteAll({ behavior: 'wait' });
  const [sheet] = await Promise.all([saved(), said.getByRole('button', { name: 'Try again' }).click()]);
  expect(sheet.suggestedFilename()).toBe('waist-to-side-practice.html');
  await expect(said).toHaveCount(0);

  // So it is on the opening of a drill.
  await keepBack(page, /-practice\.html/);
  await page.goto('/practice/#slash.4711.woven.usual.3');
  await page.getByText('Send this drill, or work it on paper').click();
  await page.getByRole('button', { name: 'Save the practice sheet' }).click();
  await expect(page.getByRole('alert')).toContainText('could not be fetched');
  await page.unrouteAll({ behavior: 'wait' });
  await Promise.all([saved(), page.getByRole('button', { name: 'Try again' }).click()]);
  await expect(page.getByRole('button', { name: 'Save the practice sheet' })).toBeVisible();
});
