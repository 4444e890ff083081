/**
 * `npm run bench`: what the project promises about speed and size, measured. `npm run bench -- a c` runs those parts only:
 * a ratios against other libraries, b replay and grade, c dragging, d sizes, e causes, f devices. Ends with 1 when a goal is not met.
 */
import { loadavg, cpus } from 'node:os';
import { allowanceBench } from './allowance.ts';
import { printCauses } from './causes.ts';
import { cutBench } from './cut.ts';
import { printDevices } from './devices.ts';
import { printDrag } from './drag.ts';
import { geometryBench } from './geometry.ts';
import { printLesson } from './lesson.ts';
import { printSizes } from './sizes.ts';

/** Rows without a goal only say how things stand. */
const isGoal = (name: string): boolean => !name.includes('no goal set');

/** Prints part (a). */
async function printRatios(): Promise<boolean> {
  const rows = [...(await allowanceBench()), ...cutBench(), ...(await geometryBench())];
  console.log(
    '\n(a) ours against others: one process, warmed, interleaved, median of the batches; µs of processor time',
  );
  const cells = rows.map(({ name, against, ours_us, theirs_us, ratio, goal }) => ({
    operation: name,
    against,
    ours: +ours_us.toFixed(2),
    theirs: +theirs_us.toFixed(2),
    ratio: +ratio.toFixed(3),
    goal: isGoal(name) ? +goal.toFixed(3) : '–',
    met: !isGoal(name) ? '–' : ratio <= goal ? 'yes' : 'NO',
  }));
  console.table(cells);
  return rows.every(({ name, ratio, goal }) => !isGoal(name) || ratio <= goal);
}

const PARTS: Readonly<Record<string, () => Promise<boolean>>> = {
  a: printRatios,
  b: printLesson,
  c: printDrag,
  d: printSizes,
  e: printCauses,
  f: printDevices,
};

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !Object.hasOwn(PARTS, name));
if (unknown.length > 0) {
  console.error(`No such part: ${unknown.join(', ')}. There are a, b, c, d, e and f.`);
  process.exit(2);
}
const load = loadavg()[0]!;
console.log(`Node ${process.version}, ${cpus().length} processors, load ${load.toFixed(1)}`);
if (load > 1)
  console.log('The machine is busy with other work: times, not ratios, come out worse than they are.');
const missed: string[] = [];
for (const name of asked.length > 0 ? asked : Object.keys(PARTS))
  if (!(await PARTS[name]!())) missed.push(name);
console.log(missed.length === 0 ? '\nAll goals met.' : `\nGoals not met in: ${missed.join(', ')}.`);
process.exitCode = missed.length === 0 ? 0 : 1;
