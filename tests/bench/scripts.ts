import { gzipSync } from 'node:zlib';
import type { Browser, Page } from '@playwright/test';

export const gzipped = (body: Buffer): number => gzipSync(body, { level: 9 }).length;

/** JavaScript that a page asked for so far: size gzipped in bytes by path. */
export class Scripts {
  readonly sizes = new Map<string, number>();
  readonly #reading: Promise<void>[] = [];

  constructor(page: Page) {
    page.on('response', (response) => {
      const { pathname } = new URL(response.url());
      if (!/javascript/.test(response.headers()['content-type'] ?? '')) return;
      this.#reading.push(response.body().then((body) => void this.sizes.set(pathname, gzipped(body))));
    });
  }
  /** Bytes, gzipped, once the network has been quiet. */
  async total(page: Page): Promise<number> {
    await page.waitForLoadState('networkidle');
    await Promise.all(this.#reading);
    return [...this.sizes.values()].reduce((sum, size) => sum + size, 0);
  }
}

/** Opens a page in a fresh context. The service worker is kept out: it fetches everything. */
export async function openFresh(
  browser: Browser,
  address: string,
  path: string,
): Promise<{ page: Page; scripts: Scripts }> {
  const context = await browser.newContext({ baseURL: address, serviceWorkers: 'block' });
  const page = await context.newPage();
  const scripts = new Scripts(page);
  await page.goto(path);
  await page.getByRole('heading', { level: 1 }).waitFor();
  return { page, scripts };
}

/** Sets to work, and waits until the step can be worked: there is something to take hold of or to do at once, and the mark can be asked for. */
export async function setToWork(page: Page, begin: 'Start at once' | 'Begin'): Promise<void> {
  await page.getByRole('button', { name: begin, exact: true }).click();
  await page.locator('[data-target], [data-act]').first().waitFor();
  await page.getByRole('button', { name: 'Check', exact: true }).waitFor();
}
