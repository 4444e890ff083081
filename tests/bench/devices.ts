import { KINDS } from '../grading/devices/kinds.ts';
import { DEVICES } from '../grading/devices/noise.ts';
import { inSum, tried } from '../grading/devices/simulate.ts';

const ATTEMPTS = 300;
/** Seeds that nothing was chosen by. */
const FIRST = 1_000_000;
/** So many points of acceptance may the devices differ, over all kinds. */
const GOAL = 2;

/** Prints part (f): how often a hand of the same skill is accepted with a mouse, a pen and a finger. */
export function printDevices(): Promise<boolean> {
  const rows = tried(KINDS, DEVICES, ATTEMPTS, FIRST);
  const names = DEVICES.map(({ name }) => name);
  const apart = (shares: readonly number[]): number => Math.max(...shares) - Math.min(...shares);
  const line = (shares: readonly number[]) => ({
    ...Object.fromEntries(names.map((name, i) => [name, +shares[i]!.toFixed(1)])),
    apart: +apart(shares).toFixed(1),
  });
  const table = Object.fromEntries(
    rows.map(({ kind, accepted }) => [kind, line(accepted.map((n) => (100 * n) / ATTEMPTS))]),
  );
  const sum = inSum(rows);
  console.log(
    `\n(f) devices: % accepted of ${ATTEMPTS} simulated attempts at each kind of gesture, the same persons with each device`,
  );
  console.table({ ...table, 'all in sum': line(sum) });
  console.log(`    apart in sum ${apart(sum).toFixed(1)} points (goal at most ${GOAL})`);
  return Promise.resolve(apart(sum) <= GOAL);
}
