import { toFragment } from '../lessons/drills/link.ts';
import { chanceOf, isDrilled } from '../practice/second-chance.ts';
import { secondDrill } from '../practice/second-drill.ts';
import { ownLog } from '../progress/own-log.ts';
import { rememberChance } from './remembered-chance.ts';

/**
 * The drill for a mistake of an earlier mark, as the fragment of a link; this tab remembers what it is for. undefined when the mistake is made
 * good, has no drill or is not known. Never rejects.
 */
export async function drillOfChance(mark: string, code: string): Promise<string | undefined> {
  const { log } = await ownLog().load();
  const chance = chanceOf(log, mark, code);
  const found = chance && isDrilled(chance) ? secondDrill(chance, log) : undefined;
  if (!chance || !found) return undefined;
  rememberChance(
    found.id,
    chance.mistakes.map(({ of, code: what }) => ({ of: of.id, code: what })),
  );
  return toFragment(found.drill);
}
