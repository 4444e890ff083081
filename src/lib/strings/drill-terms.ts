import type { Drill } from '../lessons/drills/types.ts';

const BANDS: Readonly<Record<Drill['band'], string>> = {
  wide: 'twice the usual tolerance',
  usual: 'the usual tolerance',
  strict: 'half the usual tolerance',
};

/** The terms on which a drill is worked: for which cloth, how closely it is marked, with how many hints. */
export function drillTerms({ fabric, band, hints }: Drill): string {
  const cloth = fabric === 'knit' ? 'For a knit' : 'For a woven cloth';
  const help = hints === 0 ? 'without hints' : `with ${hints === 1 ? 'one hint' : `${hints} hints`} a step`;
  return `${cloth}, marked within ${BANDS[band]}, ${help}.`;
}
