import { describe, expect, it } from 'vitest';
import { inSlices, type Rest } from '../../src/lib/panels/slices.ts';

/** Idle times that come when the test says so, each as long as it says: a clock of the test's own. */
function idle() {
  let waiting: ((left: () => number) => void) | undefined;
  const rest: Rest = (work) => {
    waiting = work;
    return () => (waiting = undefined);
  };
  return {
    rest,
    come(ms: number): void {
      const work = waiting;
      waiting = undefined;
      let left = ms;
      work?.(() => left--);
    },
    get asked() {
      return waiting !== undefined;
    },
  };
}

function* counted(to: number, seen: number[]): Generator<undefined, string> {
  for (let n = 1; n <= to; n++) {
    seen.push(n);
    yield undefined;
  }
  return 'found';
}

describe('a search in slices', () => {
  it('does one piece in a rest of no length, and more in a longer one', () => {
    const [time, seen] = [idle(), [] as number[]];
    inSlices(counted(10, seen), () => {}, time.rest);
    expect(seen).toEqual([]);
    time.come(0);
    expect(seen).toEqual([1]);
    // 7, 6, 5 ms left are enough for one more piece; 4 are not.
    time.come(7);
    expect(seen).toEqual([1, 2, 3, 4, 5]);
  });

  it('tells its result once, and asks for no more rest', () => {
    const [time, told] = [idle(), [] as string[]];
    inSlices(counted(2, []), (result) => told.push(result), time.rest);
    time.come(100);
    expect(told).toEqual(['found']);
    expect(time.asked).toBe(false);
  });

  it('tells nothing after it was stopped', () => {
    const [time, told, seen] = [idle(), [] as string[], [] as number[]];
    const stop = inSlices(counted(2, seen), (result) => told.push(result), time.rest);
    time.come(0);
    stop();
    time.come(100);
    expect([told, seen]).toEqual([[], [1]]);
  });
});
