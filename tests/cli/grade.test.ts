import { execFileSync, execSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../src/cli/grade.ts';
import { LESSONS, loadLesson } from '../../src/cli/load-lessons.ts';

const attempts = join(LESSONS, 'slanted-seam', '07-first-dart', 'attempts');
const golden = (name: string): string => join(attempts, `${name}.attempt.json`);
const STEP = 'slanted-seam/first-dart';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'grade-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function grade(...args: string[]) {
  const lines: string[] = [];
  const complaints: string[] = [];
  const status = run(
    args,
    (line) => lines.push(line),
    (line) => complaints.push(line),
  );
  return { status, lines: lines.map((line) => JSON.parse(line) as Record<string, unknown>), complaints };
}

function file(name: string, text: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

describe('grade on the command line', () => {
  it('prints one line a file and ends with 0 when all are accepted', () => {
    const files = [golden('pass-slash-and-spread'), golden('pass-typed-angle')];
    const { status, lines } = grade(STEP, ...files);
    expect(status).toBe(0);
    expect(lines.map((line) => [line.file, line.verdict])).toEqual(files.map((name) => [name, 'accepted']));
    expect(lines.every((line) => Array.isArray(line.findings))).toBe(true);
  });

  it('ends with 1 when some need work, and with 2 when some are not ready', () => {
    const wrong = golden('fail-dart-closed-residual-wrong-way');
    expect(grade(STEP, golden('pass-typed-angle'), wrong).status).toBe(1);
    expect(grade(STEP, wrong, golden('start')).status).toBe(2);
  });

  it.each([
    ['gone.json', undefined, '', 'there is no such file'],
    ['empty.json', '', '', ''],
    ['cut.json', '{"format": "pin-and-pivot/rec', '', ''],
    ['other.json', '{"a": 1}', 'format', 'nothing'],
    ['list.json', '[1, 2]', '', ''],
    ['bytes.json', new Uint8Array([0xff, 0xfe, 0x00, 0x80]), '', 'it is not text in UTF-8'],
  ] as const)(
    'refuses %s with path, expected and found, and grades the rest',
    (name, content, path, found) => {
      const bad = content === undefined ? join(folder, name) : file(name, content);
      const { status, lines } = grade(STEP, bad, golden('pass-typed-angle'));
      expect(status).toBe(2);
      expect(lines[0]).toMatchObject({ file: bad, verdict: 'notReady' });
      const [problem] = lines[0]!.problems as { path: string; expected: string; found: string }[];
      expect(problem!.path).toBe(path);
      expect(problem!.expected).not.toBe('');
      if (found) expect(problem!.found).toBe(found);
      expect(lines[1]!.verdict).toBe('accepted');
    },
  );

  it('refuses an attempt of another lesson, of a newer one, and a newer format', () => {
    const good = JSON.parse(readFileSync(golden('pass-typed-angle'), 'utf8')) as Record<string, unknown>;
    const refused = (change: object) =>
      (
        grade(STEP, file('changed.json', JSON.stringify({ ...good, ...change }))).lines[0]!.problems as {
          path: string;
        }[]
      )[0]!.path;
    expect(refused({ lesson: { id: 'yoke', content: 1 } })).toBe('lesson.id');
    expect(refused({ lesson: { id: 'slanted-seam', content: 99 } })).toBe('lesson.content');
    expect(refused({ version: 2 })).toBe('version');
  });

  it.each([
    [[]],
    [[STEP]],
    [['first-dart', 'x']],
    [['slanted-seam/first-dart/x', 'x']],
    [['yoke/draw', 'x']],
    [['slanted-seam/saw', 'x']],
  ])('asked with %j says how it is used, prints nothing and ends with 2', (args) => {
    const { status, lines, complaints } = grade(...args);
    expect(status).toBe(2);
    expect(lines).toEqual([]);
    expect(complaints).toHaveLength(1);
  });

  it('refuses a device and a file longer than any attempt, without reading them', () => {
    const found = (path: string) => (grade(STEP, path).lines[0]!.problems as { found: string }[])[0]!.found;
    expect(found('/dev/zero')).toBe('it is a device');
    expect(found(file('long.json', new Uint8Array(16_000_001)))).toBe('it is longer than 16000000 bytes');
  });

  it('ends quietly when its reader has read enough', () => {
    const args = Array<string>(40).fill(golden('pass-typed-angle')).join(' ');
    const command = `${process.execPath} --import tsx src/cli/grade.ts ${STEP} ${args} 2>&1 | head -c 9`;
    expect(execSync(command, { encoding: 'utf8' })).toBe('{"file":"');
  });

  it('says of a lesson whose file is cut off which file, and where it breaks', () => {
    const lessons = join(folder, 'lessons');
    cpSync(join(LESSONS, 'slanted-seam'), join(lessons, 'cut'), { recursive: true });
    writeFileSync(join(lessons, 'cut', '03-style-line', 'step.json'), '{"id": "style-line",\n "title');
    expect(() => loadLesson('cut', lessons)).toThrow(
      'cut/03-style-line/step.json: expected the rest of a text in quotes, found the end of the text at line 2, column 8',
    );
  });

  it('runs as the command does, with the same line', () => {
    const name = golden('pass-rest-turned');
    const out = execFileSync(process.execPath, ['--import', 'tsx', 'src/cli/grade.ts', STEP, name], {
      encoding: 'utf8',
    });
    expect(
      out
        .trimEnd()
        .split('\n')
        .map((line) => JSON.parse(line) as unknown),
    ).toEqual(grade(STEP, name).lines);
  });
});
