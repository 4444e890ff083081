import { createHash } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { expect, test } from '@playwright/test';
import { build } from 'vite';
import { FIGURES } from '../../src/lib/pattern/figures.ts';
import { toText } from '../../src/lib/recipe/save.ts';
import type { Fabric } from '../../src/lib/recipe/types.ts';
import { sampleAttempt } from '../recipe/sample.ts';
import { replayText } from './support/replay-page.ts';

/*
 * The same recipe gives the same bytes in Node and in Chromium: two builds of V8 with their own compilers' choices. What
 * the page runs is bundled from the same source as what Node runs, by the project's own bundler.
 */
async function bundle(): Promise<string> {
  const entry = fileURLToPath(new URL('support/replay-page.ts', import.meta.url));
  const made = await build({
    configFile: false,
    logLevel: 'error',
    build: { write: false, lib: { entry, formats: ['iife'], name: 'bundled' } },
  });
  const [output] = [made].flat();
  if (!output || !('output' in output)) throw new Error('nothing was bundled');
  return output.output[0].code;
}

/** What the bundle leaves on the page. */
declare const bundled: { readonly replayText: typeof replayText };

test('replay in Node and in the browser gives the same bytes', async ({ page }) => {
  const script = await bundle();
  await page.goto('about:blank');
  await page.addScriptTag({ content: script });
  const ways = [
    {},
    { turn: 'rest' },
    { separateFirst: true },
    { shoulder: 0.37, side: 0.61, d1: 11, d2: 23, notches: [33, 47, 49, 31] },
  ] as const;
  let compared = 0;
  for (const figure of Object.keys(FIGURES))
    for (const fabric of ['knit', 'woven'] satisfies Fabric[])
      for (const [i, way] of ways.entries()) {
        const text = toText(sampleAttempt(figure, fabric, way));
        const [here, there] = [replayText(text), await page.evaluate((one) => bundled.replayText(one), text)];
        const name = `${figure}, ${fabric}, way ${i + 1}`;
        // Hashes first: two long texts side by side tell nobody anything.
        expect(hash(there), name).toBe(hash(here));
        expect(there === here, name).toBe(true);
        expect(here.length, name).toBeGreaterThan(50_000);
        compared += 1;
      }
  expect(compared).toBe(40);
  // And again in the same page: what was replayed before leaves no trace.
  const text = toText(sampleAttempt('F1', 'woven'));
  expect(hash(await page.evaluate((one) => bundled.replayText(one), text))).toBe(hash(replayText(text)));
});

const hash = (text: string): string => createHash('sha256').update(text).digest('hex');
