import { existsSync } from 'node:fs';
import { createServer } from 'node:net';
import { defineConfig, devices } from '@playwright/test';
import { chromiumArgs, findChromium } from './tests/support/chromium.ts';

if (!existsSync(new URL('build/index.html', import.meta.url))) {
  throw new Error(
    'The browser tests run on the built site, and there is none yet. Run "npm run build" first.',
  );
}

// The first process chooses the browser and the port; the workers, which read this file again, inherit its choice.
const path = (process.env['PIN_CHROMIUM'] ??= findChromium().path);
const port = Number((process.env['PIN_PORT'] ??= String(await freePort())));
const address = `http://127.0.0.1:${port}`;

export default defineConfig({
  testDir: 'tests/browser',
  testMatch: '**/*.spec.ts',
  workers: 2,
  fullyParallel: true,
  forbidOnly: process.env['CI'] !== undefined,
  // On a busy machine a browser test may trip once over timing: it is run again, and the list says that it was flaky.
  retries: process.env['CI'] === undefined ? 0 : 1,
  timeout: 120_000,
  expect: { timeout: 10_000 },
  reporter: [
    ['list'],
    ['json', { outputFile: process.env['PIN_BROWSER_JSON'] ?? 'test-results/report.json' }],
  ],
  outputDir: 'test-results/artifacts',
  use: {
    baseURL: address,
    // A trace takes a picture of the page at every action and more than doubles the run: only the second try has one.
    trace: 'on-first-retry',
    launchOptions: { executablePath: path, args: [...chromiumArgs()] },
  },
  projects: [
    { name: 'chromium', use: { ...devices['Desktop Chrome'], viewport: { width: 1440, height: 900 } } },
  ],
  webServer: {
    command: 'node --import tsx src/cli/serve.ts',
    url: address,
    env: { PORT: String(port), HOST: '127.0.0.1' },
    reuseExistingServer: false,
    timeout: 30_000,
  },
});

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const found = probe.address();
      probe.close(() => {
        if (typeof found === 'object' && found !== null) resolve(found.port);
        else reject(new Error('No free port was found.'));
      });
    });
  });
}
