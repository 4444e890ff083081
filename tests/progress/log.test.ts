import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COURSE_KEY, mergeCourses, NOTHING_DONE, type CourseRecord } from '../../src/lib/progress/course.ts';
import { readStored } from '../../src/lib/progress/event-schema.ts';
import type { Log, ProgressEvent } from '../../src/lib/progress/events.ts';
import { logToText, parseLog, type WholeProgress } from '../../src/lib/progress/log-file.ts';
import { logStore, type LogBackend } from '../../src/lib/progress/log-store.ts';
import { mergeLogs, orderedText } from '../../src/lib/progress/merge.ts';
import { FIGURES } from '../../src/lib/pattern/figures.ts';
import { skillStates } from '../../src/lib/practice/schedule.ts';
import { events, mark, T0, wrong } from '../practice/history.ts';

const course: CourseRecord = {
  done: { 'waist-to-side': { on: '2026-03-02', content: 1 } },
  testedOut: { 'a-lesson-long-gone': { on: '2026-03-01', by: 'waist-to-side' } },
};
const whole = (log: Log): WholeProgress => ({ log: mergeLogs(log), course });
const read = (text: string): WholeProgress => {
  const parsed = parseLog(text);
  if ('problems' in parsed) throw new Error(JSON.stringify(parsed.problems));
  return parsed.ok;
};
const ids = (log: Log): readonly string[] => log.map(({ id }) => id).sort();

describe('logs of several devices are put together', () => {
  // The same pool of events, of which each device has a part: so they overlap.
  const shares = fc
    .tuple(events, fc.array(fc.nat(7), { minLength: 30, maxLength: 30 }))
    .map(([all, who]) => [1, 2, 4].map((bit) => all.filter((_, i) => (who[i]! & bit) !== 0)));

  it('in any order, grouped in any way, as often as one likes: nothing is lost, nothing doubled', () => {
    fc.assert(
      fc.property(shares, ([a, b, c]) => {
        const all = mergeLogs(a!, b!, c!);
        expect(mergeLogs(mergeLogs(a!, b!), c!)).toEqual(all);
        expect(mergeLogs(a!, mergeLogs(b!, c!))).toEqual(all);
        for (const order of [
          [a, c, b],
          [b, a, c],
          [b, c, a],
          [c, a, b],
          [c, b, a],
        ])
          expect(mergeLogs(...order.map((one) => one!))).toEqual(all);
        expect(mergeLogs(all, all, a!)).toEqual(all);
        expect(ids(all)).toEqual([...new Set([a, b, c].flatMap((one) => ids(one!)))].sort());
        for (let i = 1; i < all.length; i += 1) expect(all[i]!.at).toBeGreaterThanOrEqual(all[i - 1]!.at);
      }),
    );
  });

  it('also where a file was edited by hand, and one id says two things', () => {
    const one = mark(T0);
    const changed: ProgressEvent = { ...one, hints: 2 };
    expect(mergeLogs([one], [changed])).toEqual(mergeLogs([changed], [one]));
    expect(mergeLogs([one], [changed])).toHaveLength(1);
  });
});

describe('a progress file', () => {
  it('is read as it was written, and the same progress gives the same text', () => {
    fc.assert(
      fc.property(events, (all) => {
        const text = logToText(whole(all));
        expect(read(text)).toEqual(whole(all));
        expect(logToText(read(text))).toBe(text);
        expect(logToText(whole([...all].reverse()))).toBe(text);
      }),
    );
  });

  it('keeps lessons, steps and skills that this version does not know', () => {
    const old = mark(T0, {
      exercise: { kind: 'lesson', id: 'a-lesson-long-gone', content: 7 },
      step: 'a-step-long-gone',
      skill: 'a-skill-long-gone',
    });
    expect(read(logToText(whole([old]))).log).toEqual([old]);
  });

  it('has no room for measures of a body: every key is known, and none of them is one', () => {
    const data = JSON.parse(logToText(whole([mark(T0)]))) as { events: Record<string, unknown>[] };
    const [event] = data.events;
    for (const key of [...Object.keys(FIGURES.F1), 'measures', 'block', 'figure', 'attempt', 'note'])
      for (const place of [data, event!, event!['exercise'] as object]) {
        Object.assign(place, { [key]: 840 });
        expect('problems' in parseLog(JSON.stringify(data)), key).toBe(true);
        Reflect.deleteProperty(place, key);
      }
    expect('ok' in parseLog(JSON.stringify(data))).toBe(true);
  });

  const text = logToText(whole([mark(T0), wrong(T0 + 1)]));
  const changed = (
    change: (data: { events: Record<string, unknown>[] } & Record<string, unknown>) => void,
  ) => {
    const data = JSON.parse(text) as Parameters<typeof change>[0];
    change(data);
    return JSON.stringify(data);
  };
  it.each<[string, string, string, string, string]>([
    ['nothing', '', '', 'a value', 'the end of the text at line 1, column 1'],
    ['no JSON', '{"format":', '', 'a value', 'the end of the text at line 1, column 11'],
    ['a list', '[]', '', 'an object', 'a list of 0'],
    [
      'another kind of file',
      '{"format":"pin-and-pivot/recipe"}',
      'format',
      '"pin-and-pivot/progress-log"',
      '"pin-and-pivot/recipe"',
    ],
    [
      'a newer version',
      changed((data) => (data['version'] = 2)),
      'version',
      '1',
      '2, from a newer version of Pin & Pivot',
    ],
    ['no version', changed((data) => delete data['version']), 'version', 'the key "version"', 'nothing'],
    ['a key too many', changed((data) => (data['me'] = 1)), 'me', 'no such key', '1'],
    ['events that are none', changed((data) => (data.events = 3 as never)), 'events', 'Array', '3'],
    [
      'one verdict that is none',
      changed((data) => (data.events[1]!['verdict'] = 'perfect')),
      'events[1].verdict',
      '("notReady" | "needsWork" | "accepted")',
      '"perfect"',
    ],
    [
      'a time that is none',
      changed((data) => (data.events[0]!['at'] = '2026')),
      'events[0].at',
      'number',
      '"2026"',
    ],
    [
      'markup in place of an id',
      changed((data) => (data.events[0]!['step'] = '<b>')),
      'events[0].step',
      'an id',
      '"<b>"',
    ],
    [
      'a key too many in an event',
      changed((data) => (data.events[0]!['bust'] = 840)),
      'events[0].bust',
      'no such key',
      '840',
    ],
    [
      'a course that is none',
      changed((data) => (data['course'] = {})),
      'course',
      'a course record',
      'an object with no keys',
    ],
  ])('is refused whole when it is or has %s', (_, broken, path, expected, found) => {
    const parsed = parseLog(broken);
    expect('problems' in parsed && parsed.problems[0]).toEqual({ path, expected, found });
  });

  it('cut off anywhere is refused, and never throws', () => {
    for (let n = 0; n < text.length - 1; n += 3) expect('problems' in parseLog(text.slice(0, n))).toBe(true);
  });

  it('never throws, whatever the text, and says at most twenty things', () => {
    fc.assert(
      fc.property(fc.oneof(fc.json(), fc.string()), fc.nat(1e6), (any, at) => {
        for (const one of [any, text.slice(0, at % text.length) + any]) {
          const parsed = parseLog(one);
          if ('problems' in parsed) expect(parsed.problems.length).toBeLessThanOrEqual(20);
        }
      }),
    );
    const bad = changed((data) => (data.events = Array.from({ length: 90 }, () => ({ kind: 'mark' }))));
    const parsed = parseLog(bad);
    expect('problems' in parsed && parsed.problems).toHaveLength(20);
  });
});

/** A device: its storage stays when the page is loaded again. */
class Device {
  readonly disk = new Map<string, unknown>();
  full = false;
  course: CourseRecord = NOTHING_DONE;
  #store = this.#fresh();

  #fresh() {
    const backend: LogBackend = {
      all: async () => [...this.disk.values()],
      get: async (ids) => ids.map((id) => this.disk.get(id)),
      put: async (texts) => {
        if (this.full) throw new DOMException('no room', 'QuotaExceededError');
        for (const [id, text] of texts) this.disk.set(id, text);
      },
    };
    return logStore(async () => backend);
  }
  reload(): void {
    this.#store = this.#fresh();
  }
  add = (log: Log): Promise<boolean> => this.#store.add(log);
  load = () => this.#store.load();
  async file(): Promise<string> {
    return logToText({ log: (await this.load()).log, course: this.course });
  }
  async take(text: string): Promise<void> {
    const given = read(text);
    this.course = mergeCourses(this.course, given.course);
    await this.add(given.log);
  }
}

type Act =
  | { readonly do: 'practise'; readonly on: number; readonly event: number }
  | { readonly do: 'reload'; readonly on: number }
  | { readonly do: 'send'; readonly on: number; readonly to: number };

describe('three devices that practise, send each other files and are loaded again, in any order', () => {
  const device = fc.nat(2);
  const act: fc.Arbitrary<Act> = fc.oneof(
    {
      weight: 4,
      arbitrary: fc.record({ do: fc.constant('practise' as const), on: device, event: fc.nat(29) }),
    },
    { weight: 1, arbitrary: fc.record({ do: fc.constant('reload' as const), on: device }) },
    { weight: 2, arbitrary: fc.record({ do: fc.constant('send' as const), on: device, to: device }) },
  );

  it('each has at every time just what it practised and was sent, once; in the end all have the same', async () => {
    await fc.assert(
      fc.asyncProperty(events, fc.array(act, { maxLength: 40 }), async (pool, acts) => {
        const devices = [new Device(), new Device(), new Device()];
        // The reference is a plain set of ids a device.
        const has = devices.map(() => new Set<string>());
        for (const one of acts) {
          const here = devices[one.on]!;
          if (one.do === 'reload') here.reload();
          else if (one.do === 'send') {
            await devices[one.to]!.take(await here.file());
            for (const id of has[one.on]!) has[one.to]!.add(id);
          } else {
            const event = pool[one.event];
            if (!event) continue;
            await here.add([event]);
            has[one.on]!.add(event.id);
          }
          for (const [i, each] of devices.entries())
            expect(ids((await each.load()).log)).toEqual([...has[i]!].sort());
        }
        for (const from of devices) for (const to of devices) await to.take(await from.file());
        for (const from of devices) for (const to of devices) await to.take(await from.file());
        const files = await Promise.all(devices.map((one) => one.file()));
        expect(new Set(files).size).toBe(1);
        const states = await Promise.all(
          devices.map(async (one) => [...skillStates((await one.load()).log)]),
        );
        expect(states[1]).toEqual(states[0]);
        expect(states[2]).toEqual(states[0]);
      }),
      { numRuns: 60 },
    );
  });
});

describe('the store of what happened', () => {
  it('goes on in memory when the device is full, and keeps it as soon as there is room', async () => {
    const device = new Device();
    device.full = true;
    const [one, two] = [mark(T0), mark(T0 + 1)];
    expect(await device.add([one])).toBe(false);
    expect(await device.load()).toEqual({ log: [one], unreadable: 0, failure: 'full' });
    device.full = false;
    expect(await device.add([two])).toBe(true);
    device.reload();
    expect(ids((await device.load()).log)).toEqual(ids([one, two]));
  });

  it.each([
    ['SecurityError', 'forbidden'],
    ['QuotaExceededError', 'full'],
    ['VersionError', 'otherVersion'],
    ['BlockedError', 'otherVersion'],
  ])('says of a %s: %s, and goes on in memory', async (name, failure) => {
    const store = logStore(() => Promise.reject(new DOMException('no', name)));
    expect(await store.load()).toEqual({ log: [], unreadable: 0, failure });
    expect(await store.add([mark(T0)])).toBe(false);
    expect((await store.load()).log).toHaveLength(1);
  });

  it('takes many at once, and of one id with two contents the same as everywhere', async () => {
    const device = new Device();
    const one = mark(T0);
    const edited: ProgressEvent = { ...one, hints: 2 };
    await Promise.all([device.add([one]), device.add([edited]), device.add([mark(T0 + 1), mark(T0 + 2)])]);
    expect((await device.load()).log).toEqual(mergeLogs([one], [edited], (await device.load()).log));
    expect(device.disk.size).toBe(3);
  });

  it('leaves what it cannot read where it is, counts it, and reads the rest', async () => {
    const device = new Device();
    const good = mark(T0);
    await device.add([good]);
    const newer = orderedText({ ...mark(T0), kind: 'sung' });
    device.disk.set('x', '{').set('y', 7).set('z', newer);
    device.reload();
    expect(await device.load()).toEqual({ log: [good], unreadable: 3, failure: undefined });
    await device.add([mark(T0 + 1)]);
    expect(device.disk.get('z')).toBe(newer);
    expect(device.disk.size).toBe(5);
  });

  it('reads from storage just what it reads from a file', () => {
    fc.assert(
      fc.property(events, (all) => {
        for (const event of all) expect(readStored(orderedText(event))).toEqual(event);
      }),
    );
  });

  it('lies beside the course record, whose key no lesson can have', () => expect(COURSE_KEY).toMatch(/^:/));
});
