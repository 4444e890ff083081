import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Browser } from '@playwright/test';
import { listenFrom, staticServer } from '../../src/cli/static-server.ts';
import { findChromium } from '../support/chromium.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
export const BUILD = join(ROOT, 'build');

/** When the newest file of a folder was written, ms; 0 for an empty or absent one. */
function newest(folder: string): number {
  if (!existsSync(folder)) return 0;
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  return Math.max(0, ...files.map(({ parentPath, name }) => statSync(join(parentPath, name)).mtimeMs));
}

/** Builds the site unless it is there and newer than what it is made of. */
function build(): void {
  const sources = Math.max(...['src', 'lessons', 'static'].map((folder) => newest(join(ROOT, folder))));
  if (newest(BUILD) > sources) return;
  const done = spawnSync('npm', ['run', '-s', 'build'], { cwd: ROOT, encoding: 'utf8' });
  if (done.status !== 0) throw new Error(`The site could not be built.\n${done.stdout}${done.stderr}`);
}

/** Runs a measurement in a headless browser on the built site, served on this machine. */
export async function onSite<T>(measure: (browser: Browser, address: string) => Promise<T>): Promise<T> {
  build();
  const server = staticServer(BUILD);
  const port = await listenFrom(server, 4900, '127.0.0.1');
  const { path, args } = findChromium();
  const browser = await chromium.launch({ executablePath: path, args: [...args] });
  try {
    return await measure(browser, `http://127.0.0.1:${port}`);
  } finally {
    await browser.close();
    server.closeAllConnections();
    server.close();
  }
}
