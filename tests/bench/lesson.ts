import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { distinctAttempts } from './attempts.ts';
import { median } from './harness.ts';
import type { Passes } from './lesson-pass.ts';
import { selfTimes, type SelfTime } from './profile.ts';

const ENTRY = fileURLToPath(new URL('lesson-pass.ts', import.meta.url));

export interface LessonBench {
  readonly attempts: number;
  readonly passes: Passes;
  /** Median over the passes: attempts a second of processor time, and by the clock. */
  readonly perCpuSecond: number;
  readonly perSecond: number;
  /** The functions with the most own time, from a second run. */
  readonly profile: readonly SelfTime[];
}

/** JavaScript of the child, made by the site's own builder; a file for each module, so that a profile names files. */
async function bundle(outDir: string, preserveModules: boolean): Promise<void> {
  await build({
    configFile: false,
    ssr: { noExternal: true },
    logLevel: 'error',
    build: {
      ssr: ENTRY,
      outDir,
      target: 'node20',
      minify: false,
      rolldownOptions: { output: { preserveModules, entryFileNames: '[name].mjs' } },
    },
  });
}

/**
 * Replay and grade of the whole lesson for distinct attempts, in a fresh process that does nothing else, several passes; and
 * where the time goes, from another fresh process under the profiler.
 */
export async function lessonBench({ attempts = 1000, passes = 9 } = {}): Promise<LessonBench> {
  const lesson = loadLesson('slanted-seam');
  if (lesson === undefined) throw new Error('the lesson is not there');
  const folder = mkdtempSync(join(tmpdir(), 'pin-and-pivot-bench-'));
  try {
    const files = [join(folder, 'lesson.json'), join(folder, 'attempts.json')];
    writeFileSync(files[0]!, JSON.stringify(lesson));
    writeFileSync(files[1]!, JSON.stringify(distinctAttempts(attempts)));
    const run = (flags: string[], module: string, rounds: number): string => {
      const child = spawnSync(process.execPath, [...flags, module, ...files, String(rounds)], {
        encoding: 'utf8',
        env: { ...process.env, NODE_OPTIONS: '' },
      });
      if (child.status !== 0) throw new Error(child.stderr);
      return child.stdout;
    };
    await bundle(join(folder, 'one'), false);
    await bundle(join(folder, 'many'), true);
    const result = JSON.parse(run([], join(folder, 'one', 'lesson-pass.mjs'), passes)) as Passes;
    run(['--cpu-prof', `--cpu-prof-dir=${folder}`], profiled(join(folder, 'many')), 3);
    const profile = readdirSync(folder).find((name) => name.endsWith('.cpuprofile'))!;
    return {
      attempts,
      passes: result,
      perCpuSecond: median(result.perCpuSecond),
      perSecond: median(result.perSecond),
      profile: selfTimes(join(folder, profile)),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The entry module in a folder whose modules keep their paths. */
function profiled(folder: string): string {
  const found = readdirSync(folder, { recursive: true })
    .map(String)
    .find((name) => name.endsWith('lesson-pass.mjs'));
  if (found === undefined) throw new Error('the profiled build has no entry');
  return join(folder, found);
}

/** Prints part (b). */
export async function printLesson(top = 15): Promise<boolean> {
  const result = await lessonBench();
  const { attempts, passes, perCpuSecond, perSecond, profile } = result;
  const met = perCpuSecond >= 2000 && passes.failed.length === 0;
  console.log(
    `\n(b) replay and grade of the whole lesson: ${attempts} distinct attempts, a fresh process, ${passes.perSecond.length} passes`,
  );
  console.log(
    `    ${Math.round(perCpuSecond)} attempts a second of one core (processor time of all its threads, median)`,
  );
  console.log(
    `    ${Math.round(perSecond)} a second by the clock; first pass, cold: ${Math.round(passes.perCpuSecond[0]!)}`,
  );
  console.log(
    `    goal 2000, aim 3000: ${met ? 'met' : 'NOT met'}; each accepted in every step: ${passes.failed.length === 0 ? 'yes' : `no, ${passes.failed.length} marks: ${passes.failed.slice(0, 3).join('; ')}`}`,
  );
  console.log('    own time by function:');
  for (const { name, file, share } of profile.slice(0, top)) {
    console.log(`    ${(100 * share).toFixed(1).padStart(6)} %  ${name}  (${file})`);
  }
  const byFile = new Map<string, number>();
  for (const { file, share } of profile) byFile.set(file, (byFile.get(file) ?? 0) + share);
  const files = [...byFile].sort((a, b) => b[1] - a[1]).slice(0, top);
  const parts = files.map(([file, share]) => `${file || 'the engine'} ${(100 * share).toFixed(1)}`);
  console.log(`    by file, %: ${parts.join(', ')}`);
  return met;
}

if (process.argv[1]?.endsWith('bench/lesson.ts')) await printLesson(60);
