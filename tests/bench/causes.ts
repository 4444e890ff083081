import { diagnose } from '../../src/lib/grading/causes/diagnose.ts';
import { namedIn } from '../grading/causes/named.ts';
import { LESSON_TRUTHS, rightInLessons, wrongInLessons } from '../grading/causes/simulate-lessons.ts';
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

/** How often which cause was named, by what was done wrong. */
class Confusion {
  readonly #rows = new Map<string, Map<string, number>>();

  note(truth: string, found: string): void {
    const row = this.#rows.get(truth) ?? new Map<string, number>();
    this.#rows.set(truth, row.set(found, (row.get(found) ?? 0) + 1));
  }

  /** Prints the matrix and its sums; `nothing`: what stands for no cause. Gives whether the goals are met. */
  print(title: string, truths: readonly string[], nothing: readonly string[]): boolean {
    const columns = [...truths, ...nothing];
    let hit = 0;
    let miss = 0;
    let falsely = 0;
    for (const [truth, row] of this.#rows)
      for (const [found, n] of row) {
        if (truth === 'right attempt') falsely += found === nothing[0] ? 0 : n;
        else if (found === truth) hit += n;
        else if (!nothing.includes(found)) miss += n;
        if (!columns.includes(found)) columns.push(found);
      }
    console.log(`\n(e) causes: ${title}`);
    console.log('    rows: what was done wrong; columns: what was named');
    console.table(
      Object.fromEntries(
        [...this.#rows].map(([truth, row]) => [
          truth,
          Object.fromEntries(columns.map((c) => [c, row.get(c) ?? 0]).filter(([, n]) => n !== 0)),
        ]),
      ),
    );
    console.log(`    named rightly ${((100 * hit) / WRONG).toFixed(1)} % (goal ${NAMED * 100})`);
    console.log(`    named wrongly ${((100 * miss) / WRONG).toFixed(1)} % (goal at most ${MISNAMED * 100})`);
    console.log(`    right attempts that were given a cause or a fault: ${falsely} of ${RIGHT} (goal 0)`);
    return hit >= NAMED * WRONG && miss <= MISNAMED * WRONG && falsely === 0;
  }
}

const HAND = `a hand that trembles by ${TREMBLE} mm at full size`;

/** Wrong procedures alone, held against the table of a drill's or a lesson's step in which all is given. */
function byProcedures(): boolean {
  const confusion = new Confusion();
  for (const one of wrongAttempts(WRONG)) confusion.note(one.truth, named(one));
  for (let seed = 0, made = 0; made < RIGHT; seed++) {
    const one = simulateRight(50_000 + seed);
    if (!one) continue;
    made++;
    confusion.note('right attempt', named(one));
  }
  const title = `${WRONG} wrong and ${RIGHT} right simulated attempts at drills and lessons, ${HAND}`;
  return confusion.print(title, TRUTHS, ['right', 'none']);
}

/** What is read under the mark of any step of the course, by people who choose what it leaves free. */
function inLessons(): boolean {
  const confusion = new Confusion();
  for (const one of wrongInLessons(WRONG)) confusion.note(one.truth, namedIn(one).join(' and ') || 'nothing');
  for (const one of rightInLessons(RIGHT))
    confusion.note('right attempt', namedIn(one).join(' and ') || 'nothing');
  return confusion.print(
    `${WRONG} wrong and ${RIGHT} right simulated attempts at lessons alone, findings and what is said beside them, ${HAND}`,
    LESSON_TRUTHS,
    ['nothing'],
  );
}

/** Prints part (e): which cause is named for simulated wrong attempts, as tables and confusion matrices. */
export function printCauses(): Promise<boolean> {
  return Promise.resolve([byProcedures(), inLessons()].every((met) => met));
}
