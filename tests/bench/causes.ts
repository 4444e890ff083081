import { diagnose } from '../../src/lib/grading/causes/diagnose.ts';
import { simulateRight, TREMBLE, TRUTHS, wrongAttempts, type Simulated } from '../grading/causes/simulate.ts';

const WRONG = 2000;
const RIGHT = 500;
/** Share of wrong attempts whose cause is named at the least, and of those that get a wrong one at the most. */
const NAMED = 0.95;
const MISNAMED = 0.01;

const named = ({ before, after, own, right }: Simulated): string => {
  const found = diagnose(before, after, own, right);
  return found.kind === 'cause' ? found.cause.code : found.kind;
};

/** Prints part (e): which cause is named for simulated wrong attempts, as a table and a confusion matrix. */
export function printCauses(): Promise<boolean> {
  const counts = new Map<string, Map<string, number>>();
  const note = (truth: string, found: string): void => {
    const row = counts.get(truth) ?? new Map<string, number>();
    counts.set(truth, row.set(found, (row.get(found) ?? 0) + 1));
  };
  for (const one of wrongAttempts(WRONG)) note(one.truth, named(one));
  for (let seed = 0, made = 0; made < RIGHT; seed++) {
    const one = simulateRight(50_000 + seed);
    if (!one) continue;
    made++;
    note('right attempt', named(one));
  }
  const columns = [...TRUTHS, 'right', 'none'];
  const matrix = Object.fromEntries(
    [...counts].map(([truth, row]) => [
      truth,
      Object.fromEntries(columns.map((c) => [c, row.get(c) ?? 0]).filter(([, n]) => n !== 0)),
    ]),
  );
  let hit = 0;
  let miss = 0;
  for (const [truth, row] of counts) {
    if (truth === 'right attempt') continue;
    for (const [found, n] of row) {
      if (found === truth) hit += n;
      else if (found !== 'right' && found !== 'none') miss += n;
    }
  }
  const falsely = RIGHT - (counts.get('right attempt')?.get('right') ?? 0);
  console.log(
    `\n(e) causes: ${WRONG} wrong and ${RIGHT} right simulated attempts at drills and lessons, a hand that trembles by ${TREMBLE} mm at full size`,
  );
  console.log('    rows: what was done wrong; columns: what was named');
  console.table(matrix);
  console.log(`    named rightly ${((100 * hit) / WRONG).toFixed(1)} % (goal ${NAMED * 100})`);
  console.log(`    named wrongly ${((100 * miss) / WRONG).toFixed(1)} % (goal at most ${MISNAMED * 100})`);
  console.log(`    right attempts that were given a cause or a fault: ${falsely} of ${RIGHT} (goal 0)`);
  return Promise.resolve(hit >= NAMED * WRONG && miss <= MISNAMED * WRONG && falsely === 0);
}
