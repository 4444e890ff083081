/** One row of the table of ratios. */
export interface BenchRow {
  readonly name: string;
  /** What it is measured against. */
  readonly against: string;
  /** Median time of one operation, µs. */
  readonly ours_us: number;
  readonly theirs_us: number;
  /** Median over the batches of ours / theirs. */
  readonly ratio: number;
  /** The ratio to reach. */
  readonly goal: number;
}

export interface BenchOptions {
  /** Timed batches of each side, nine or more. */
  readonly batches?: number;
  /** Operations in a batch. */
  readonly iterations?: number;
  /** Untimed batches of each side before. */
  readonly warmup?: number;
}

export interface Timing {
  readonly ours_us: number;
  readonly theirs_us: number;
  readonly ratio: number;
}

// Time of this process on a processor, µs: what other programs do meanwhile hardly shows.
const now = (): number => {
  const { user, system } = process.cpuUsage();
  return user + system;
};

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : 0.5 * (sorted[middle - 1]! + sorted[middle]!);
}

// What operations return is added up here, so that no engine drops them as useless.
let sink = 0;
export const swallowed = (): number => sink;

/**
 * Times two operations in one process, warmed, batch by batch in turn (the one that starts changes too), and gives medians. Each
 * operation gets the number of its run and returns a number. Only ratios from one such run mean anything.
 */
export function interleaved(
  ours: (i: number) => number,
  theirs: (i: number) => number,
  { batches = 15, iterations = 1000, warmup = 5 }: BenchOptions = {},
): Timing {
  if (batches < 9) throw new RangeError('nine batches or more');
  const batch = (operation: (i: number) => number): number => {
    const start = now();
    for (let i = 0; i < iterations; i++) sink += operation(i);
    return (now() - start) / iterations;
  };
  for (let i = 0; i < warmup; i++) {
    batch(ours);
    batch(theirs);
  }
  const mine: number[] = [];
  const other: number[] = [];
  for (let i = 0; i < batches; i++) {
    if (i % 2 === 0) {
      mine.push(batch(ours));
      other.push(batch(theirs));
    } else {
      other.push(batch(theirs));
      mine.push(batch(ours));
    }
  }
  return {
    ours_us: median(mine),
    theirs_us: median(other),
    ratio: median(mine.map((t, i) => t / other[i]!)),
  };
}
