import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { replayDocument } from '../../src/lib/recipe/document.ts';
import { toText } from '../../src/lib/recipe/save.ts';
import { sampleAttempt } from './sample.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const run = (...args: string[]) =>
  spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/replay.ts', ...args], {
    cwd: root,
    encoding: 'utf8',
  });

let folder = '';
const file = (name: string, text: string | Uint8Array): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'replay-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('the replay command', { timeout: 60_000 }, () => {
  const attempt = sampleAttempt('F2', 'woven', { upTo: 'separate' });

  it('prints one JSON document, the same bytes as in this process', () => {
    const { status, stdout, stderr } = run(file('good.recipe.json', toText(attempt)));
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toBe(`${JSON.stringify(replayDocument(attempt))}\n`);
    const { pieces } = JSON.parse(stdout) as { pieces: { id: string; outline: { segments: object[] }[] }[] };
    expect(pieces.map((p) => p.id)).toEqual(['upper', 'lower', 'back']);
    for (const piece of pieces)
      for (const edge of piece.outline) expect(edge.segments.length).toBeGreaterThan(0);
  });

  it('ends with status 2 and says path, expected and found for what it cannot use', () => {
    const broken = run(file('broken.json', '{"format": '));
    expect(broken).toMatchObject({ status: 2, stdout: '' });
    expect(broken.stderr).toContain('expected a value, found the end of the text at line 1, column 12');
    const newer = run(file('newer.json', JSON.stringify({ ...attempt, version: 9 })));
    expect(newer).toMatchObject({ status: 2, stdout: '' });
    expect(newer.stderr).toContain('version: expected 1, found 9, from a newer version of Pin & Pivot');
    expect(run(file('binary.json', new Uint8Array([0xff, 0xfe, 0]))).stderr).toContain('not text in UTF-8');
    expect(run(join(folder, 'missing.json')).stderr).toContain('there is no such file');
    expect(run(folder).status).toBe(2);
    expect(run().status).toBe(2);
  });
});
