import { drillOfSkill } from './next-drill.ts';
import { drillOfChance } from './second-chance.ts';

/**
 * Leads to the drill that an address asks for by what it is good for: `skill=waist-to-side/slash/plain`, a fresh one of that skill, as hard as
 * the learner can do; `chance=<mark>/<code>`, the one that isolates a mistake of an earlier mark. The address then names the drill, so that a
 * reload shows the same one. `gone`: the second chance is no more. undefined: it asks for nothing that is known.
 */
export async function leadTo(text: string): Promise<'led' | 'gone' | undefined> {
  const [, skill] = /^skill=(.*)$/.exec(text) ?? [];
  if (skill !== undefined) {
    const found = await drillOfSkill(skill);
    if (found !== undefined) location.replace(`#${found}`);
    return found === undefined ? undefined : 'led';
  }
  const [, mark, code] = /^chance=([A-Za-z0-9-]+)\/(.+)$/.exec(text) ?? [];
  if (mark === undefined || code === undefined) return undefined;
  const found = await drillOfChance(mark, code);
  location.replace(`#${found ?? ''}`);
  return found === undefined ? 'gone' : 'led';
}
