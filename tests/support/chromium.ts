/**
 * Finds a Chromium for the browser tests, in this order: the one in CHROMIUM_PATH, Playwright's own, the system's, and
 * on a Debian machine as root the `chromium` package, which is then installed.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium } from '@playwright/test';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const FOLDERS = ['/usr/bin', '/usr/local/bin', '/snap/bin'];

export interface Browser {
  readonly path: string;
  readonly args: readonly string[];
}

/** The browser to use; throws with a plain text that says how to get one where there is none. */
export function findChromium(): Browser {
  const path = present() ?? (mayInstall() ? installed() : undefined);
  if (path === undefined) throw new Error(HOW);
  return { path, args: chromiumArgs() };
}

/** Flags for a quiet browser on a machine without a display; root needs the sandbox off. */
export function chromiumArgs(): readonly string[] {
  return [
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    ...(isRoot() ? ['--no-sandbox'] : []),
  ];
}

const HOW = [
  'No Chromium was found for the browser tests. One of these gets one:',
  '  npx playwright install chromium      (Playwright downloads its own)',
  '  apt-get install chromium             (Debian, as root)',
  '  CHROMIUM_PATH=<path> npm test        (a Chromium or Chrome that is already there)',
].join('\n');

function present(): string | undefined {
  const asked = process.env['CHROMIUM_PATH'];
  if (asked !== undefined && asked !== '') {
    if (existsSync(asked)) return asked;
    throw new Error(`CHROMIUM_PATH says "${asked}", and there is no such file.`);
  }
  const own = chromium.executablePath();
  if (own !== '' && existsSync(own)) return own;
  const folders = [...new Set([...FOLDERS, ...(process.env['PATH'] ?? '').split(delimiter)])];
  return NAMES.flatMap((name) => folders.map((folder) => join(folder, name))).find((path) =>
    existsSync(path),
  );
}

function isRoot(): boolean {
  return process.getuid?.() === 0;
}

function mayInstall(): boolean {
  if (process.platform !== 'linux' || !isRoot() || !existsSync('/etc/os-release')) return false;
  const debian = /^ID=debian$/m.test(readFileSync('/etc/os-release', 'utf8'));
  return debian && spawnSync('apt-get', ['--version'], { stdio: 'ignore' }).status === 0;
}

function installed(): string | undefined {
  console.log('No Chromium found; installing the Debian package "chromium" ...');
  const wait = ['-o', 'DPkg::Lock::Timeout=300'];
  for (let round = 1; round <= 20; round += 1) {
    try {
      apt([...wait, 'update']);
      apt([...wait, 'install', '-y', '--no-install-recommends', 'chromium', 'fonts-liberation']);
      return present();
    } catch (error) {
      const text = error instanceof Error && 'stderr' in error ? String(error.stderr) : String(error);
      // Another program is installing something; the lists' lock is not waited for by apt itself.
      if (!/could not get lock|unable to (acquire|lock)/i.test(text)) {
        console.error(text);
        return undefined;
      }
      console.log('Another program holds the package lock; trying again in 15 s ...');
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 15_000);
      const arrived = present();
      if (arrived !== undefined) return arrived;
    }
  }
  return undefined;
}

function apt(args: readonly string[]): void {
  execFileSync('apt-get', args, {
    stdio: ['ignore', 'ignore', 'pipe'],
    encoding: 'utf8',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
}
