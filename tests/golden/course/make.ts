/*
 * Writes the golden attempts of the course lessons into their step folders. Files that are there already are frozen: they are never
 * written again. Each case says beforehand what its mark must be; one that is marked otherwise is reported and not written.
 *
 *   node --import tsx tests/golden/course/make.ts [--dry] [lesson id] [part of a name]
 */
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { LESSONS, loadLesson, stepFolders } from '../../../src/cli/load-lessons.ts';
import { gradeOne } from '../../../src/lib/grading/grade.ts';
import type { Finding } from '../../../src/lib/grading/types.ts';
import { toText } from '../../../src/lib/recipe/save.ts';
import { courseAttempt, type CourseCase } from './case.ts';

const args = process.argv.slice(2);
const dry = args.includes('--dry');
const [only, part = ''] = args.filter((arg) => !arg.startsWith('--'));
const open = (finding: Finding): boolean => finding.state === 'wrong' || finding.state === 'missing';
const same = (a: readonly string[], b: readonly string[]): boolean =>
  JSON.stringify([...a].sort()) === JSON.stringify([...b].sort());

const HERE = import.meta.dirname;
const ids = readdirSync(HERE)
  .filter((name) => name.endsWith('.ts') && !['case.ts', 'make.ts', 'readings.ts'].includes(name))
  .map((name) => name.slice(0, -3))
  .filter((id) => only === undefined || id === only);

let all = 0;
let wrong = 0;
for (const id of ids) {
  const lesson = loadLesson(id);
  if (lesson === undefined) throw new Error(`there is no lesson ${id}`);
  const { CASES } = (await import(join(HERE, `${id}.ts`))) as { CASES: readonly CourseCase[] };
  for (const one of CASES.filter((c) => `${c.step}/${c.name}`.includes(part))) {
    all++;
    const attempt = courseAttempt(lesson, one);
    const mark = gradeOne(lesson, one.step, attempt);
    const codes = mark.findings.filter(open).map((finding) => finding.code);
    const causes = mark.findings.filter(open).flatMap((finding) => finding.cause?.code ?? []);
    if (mark.verdict !== one.verdict || !same(codes, one.codes) || !same(causes, one.causes)) {
      wrong++;
      console.log(`${id} ${one.step}/${one.name}: ${mark.verdict} ${codes.join(' ')} | ${causes.join(' ')}`);
      console.log(`   wanted ${one.verdict} ${one.codes.join(' ')} | ${one.causes.join(' ')}`);
      for (const f of mark.findings.filter(open))
        console.log('     ', f.code, f.measured, f.expected, JSON.stringify(f.about));
      continue;
    }
    const at = lesson.steps.findIndex((step) => step.id === one.step);
    const folder = join(LESSONS, id, stepFolders(id)[at]!, 'attempts');
    const file = join(folder, `${one.name}.attempt.json`);
    if (dry || existsSync(file)) continue;
    mkdirSync(folder, { recursive: true });
    writeFileSync(file, toText(attempt));
    const sidecar = join(folder, 'expected.json');
    const known = existsSync(sidecar)
      ? (JSON.parse(readFileSync(sidecar, 'utf8')) as Record<string, unknown>)
      : {};
    known[one.name] = { verdict: one.verdict, codes: [...one.codes].sort(), causes: [...one.causes].sort() };
    writeFileSync(sidecar, `${JSON.stringify(known, null, 2)}\n`);
  }
}
console.log(`${all} cases, ${wrong} not as wanted`);
process.exitCode = wrong > 0 ? 1 : 0;
