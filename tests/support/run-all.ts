/**
 * Everything that is checked, in one command: `npm test`. Each part runs even where an earlier one failed, so that one
 * run tells all; only the browser flows need the build. The last line counts the unit and browser tests and, one each,
 * the other parts.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { browserCount, unitCount, type Count } from './counts.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const reports = join(root, 'test-results');
const unitReport = join(reports, 'unit.json');
const browserReport = join(reports, 'browser.json');

interface Part {
  readonly title: string;
  readonly command: readonly string[];
  /** Reads how many tests ran from the report of the part's own runner; without it the part counts as one. */
  readonly count?: () => Count;
  readonly needs?: string;
}

const parts: readonly Part[] = [
  { title: 'Format', command: ['npm', 'run', '-s', 'format:check'] },
  { title: 'Lint, with the layer rule', command: ['npm', 'run', '-s', 'lint'] },
  { title: 'Types', command: ['npm', 'run', '-s', 'check'] },
  {
    title: 'Unit, property, golden and outside checks',
    command: [
      'npm',
      'run',
      '-s',
      'test:unit',
      '--',
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${unitReport}`,
    ],
    count: () => unitCount(readReport(unitReport)),
  },
  { title: 'Build', command: ['npm', 'run', '-s', 'build', '--', '--logLevel', 'warn'] },
  {
    title: 'Browser flows on the built site',
    command: ['npm', 'run', '-s', 'test:browser'],
    count: () => browserCount(readReport(browserReport)),
    needs: 'Build',
  },
];

rmSync(reports, { recursive: true, force: true });
mkdirSync(reports, { recursive: true });

const failed = new Set<string>();
const lines: string[] = [];
const total = { passed: 0, failed: 0, skipped: 0 };

for (const part of parts) {
  console.log(`\n=== ${part.title} ===`);
  const begin = process.hrtime.bigint();
  const count = run(part);
  const seconds = Number(process.hrtime.bigint() - begin) / 1e9;
  if (count.failed > 0) failed.add(part.title);
  total.passed += count.passed;
  total.failed += count.failed;
  total.skipped += count.skipped;
  const state = count.failed > 0 ? 'FAILED' : 'passed';
  lines.push(
    `${state}  ${part.title} (${count.passed} of ${count.passed + count.failed}, ${seconds.toFixed(0)} s)`,
  );
}

console.log('\n=== Summary ===');
for (const line of lines) console.log(line);
const skipped = total.skipped > 0 ? `, ${total.skipped} skipped` : '';
console.log(`${total.passed} passed, ${total.failed} failed${skipped}`);
process.exitCode = total.failed === 0 ? 0 : 1;

function run(part: Part): Count {
  if (part.needs !== undefined && failed.has(part.needs)) {
    console.log(`Not run: "${part.needs}" failed.`);
    return { passed: 0, failed: 1, skipped: 0 };
  }
  const [program = '', ...args] = part.command;
  const env = { ...process.env, PIN_BROWSER_JSON: browserReport };
  const { status } = spawnSync(program, args, {
    cwd: root,
    env,
    stdio: ['ignore', 'inherit', 'inherit'],
    shell: process.platform === 'win32',
  });
  const ok = status === 0;
  if (part.count === undefined) return { passed: ok ? 1 : 0, failed: ok ? 0 : 1, skipped: 0 };
  const count = part.count();
  // A runner that failed outside its tests, or ran none, has not passed.
  const silent = (!ok && count.failed === 0) || count.passed + count.failed === 0;
  return silent ? { ...count, failed: count.failed + 1 } : count;
}

function readReport(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return undefined;
  }
}
