/*
 * Writes the golden attempts into the lesson's step folders. Files that are there already are frozen: they are never written
 * again. Each case says beforehand what its mark must be; one that is marked otherwise is reported and not written.
 *
 *   node --import tsx tests/golden/make.ts [--dry] [part of a name]
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { LESSONS, loadLesson } from '../../src/cli/load-lessons.ts';
import { gradeOne } from '../../src/lib/grading/grade.ts';
import type { Finding } from '../../src/lib/grading/types.ts';
import { toText } from '../../src/lib/recipe/save.ts';
import { STEPS } from '../recipe/sample.ts';
import { attemptOf, type Case } from './case.ts';
import { CASES } from './cases/index.ts';

const lesson = loadLesson('slanted-seam')!;
const args = process.argv.slice(2);
const dry = args.includes('--dry');
const part = args.find((arg) => !arg.startsWith('--')) ?? '';

const folderOf = (step: Case['step']): string => {
  const number = String(STEPS.indexOf(step) + 1).padStart(2, '0');
  return join(LESSONS, lesson.id, `${number}-${step}`, 'attempts');
};

const open = (finding: Finding): boolean => finding.state === 'wrong' || finding.state === 'missing';

let wrong = 0;
for (const one of CASES.filter((c) => `${c.step}/${c.name}`.includes(part))) {
  const attempt = attemptOf(one);
  const mark = gradeOne(lesson, one.step, attempt);
  const codes = mark.findings.filter(open).map((finding) => finding.code);
  const causes = mark.findings.filter(open).flatMap((finding) => finding.cause?.code ?? []);
  const same = (a: readonly string[], b: readonly string[]) =>
    JSON.stringify([...a].sort()) === JSON.stringify([...b].sort());
  if (mark.verdict !== one.verdict || !same(codes, one.codes) || !same(causes, one.causes)) {
    wrong++;
    console.log(`${one.step}/${one.name}: ${mark.verdict} ${codes.join(' ')} | ${causes.join(' ')}`);
    console.log(`   wanted ${one.verdict} ${one.codes.join(' ')} | ${one.causes.join(' ')}`);
    for (const f of mark.findings.filter(open))
      console.log('     ', f.code, f.measured, f.expected, JSON.stringify(f.about));
    continue;
  }
  const folder = folderOf(one.step);
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
console.log(`${CASES.length} cases, ${wrong} not as wanted`);
process.exitCode = wrong > 0 ? 1 : 0;
