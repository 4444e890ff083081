import { readFileSync } from 'node:fs';
import { basename } from 'node:path';

/** Own time of one function in a profile: share of all samples, 0 to 1. */
export interface SelfTime {
  readonly name: string;
  readonly file: string;
  readonly share: number;
}

interface CpuProfile {
  readonly nodes: readonly {
    readonly id: number;
    readonly callFrame: { readonly functionName: string; readonly url: string; readonly lineNumber: number };
  }[];
  readonly samples: readonly number[];
  readonly timeDeltas: readonly number[];
}

/** Own time by function, greatest first, from a file that `node --cpu-prof` wrote. Idle time is left out. */
export function selfTimes(file: string): SelfTime[] {
  const profile = JSON.parse(readFileSync(file, 'utf8')) as CpuProfile;
  const frames = new Map(profile.nodes.map((node) => [node.id, node.callFrame]));
  const spent = new Map<string, { name: string; file: string; time: number }>();
  let whole = 0;
  profile.samples.forEach((id, i) => {
    const frame = frames.get(id)!;
    if (frame.functionName === '(idle)' || frame.functionName === '(program)') return;
    const time = profile.timeDeltas[i]!;
    const key = `${frame.functionName} ${frame.url} ${frame.lineNumber}`;
    const entry = spent.get(key) ?? {
      name: frame.functionName || `(anonymous, line ${frame.lineNumber + 1})`,
      file: basename(frame.url),
      time: 0,
    };
    entry.time += time;
    whole += time;
    spent.set(key, entry);
  });
  return [...spent.values()]
    .sort((a, b) => b.time - a.time)
    .map(({ name, file: from, time }) => ({ name, file: from, share: time / whole }));
}
