import { toFragment } from '../../../src/lib/lessons/drills/link.ts';
import type { Variant } from '../../../src/lib/lessons/drills/types.ts';
import { findDart } from '../../../src/lib/pattern/outline.ts';
import { apply } from '../../../src/lib/recipe/apply.ts';
import { startWork } from '../../../src/lib/recipe/start.ts';
import type { Command, TurnBy, Work } from '../../../src/lib/recipe/types.ts';

/* Other hands than the generator's: each makes of a worked drill the commands of who goes another way to the same end. */
const BUST = { landmark: 'right/bust-point' } as const;

export type Row = readonly Command[];
export type Route = (v: Variant, worked: Row) => Row;

const ofStep = (all: Row, ...steps: string[]): Row => all.filter((c) => steps.includes(c.step ?? ''));
const turnsOf = (all: Row): Extract<Command, { do: 'turn' }>[] =>
  all.filter((c): c is Extract<Command, { do: 'turn' }> => c.do === 'turn');

/** The table of a row of commands, all of which have to be followed. */
export function tableOf(v: Variant, row: Row): Work {
  let work = startWork({ figure: v.figure, form: v.form });
  for (const command of row) {
    const next = apply(work, command);
    if ('refused' in next)
      throw new Error(`${toFragment(v.drill)} ${JSON.stringify(command)}: ${JSON.stringify(next.refused)}`);
    work = next.work;
  }
  return work;
}

/** Pinned at the bust point, swung and traced, in place of cut and turned: one command for the line, the cut and the turn. */
export const pinned: Route = (v, worked) =>
  worked.flatMap((c): Row => {
    if (c.do === 'cut-slash' || c.do === 'turn') return [];
    if (c.do !== 'draw-slash') return [c];
    const by: TurnBy = { until: 'legs-meet' };
    const pin = { do: 'pivot', slash: c.slash, from: c.from, about: BUST, by, part: 'freed' } as const;
    return [{ ...pin, dart: v.darts[0]!, step: c.step! }];
  });

/** Cut and turned in place of pinned. */
export const cut: Route = (v, worked) =>
  worked.flatMap((c): Row => {
    if (c.do !== 'pivot') return [c];
    const step = c.step!;
    return [
      { do: 'draw-slash', slash: c.slash, from: c.from, to: BUST, step },
      { do: 'cut-slash', slash: c.slash, past: 0, step },
      {
        do: 'turn',
        dart: v.darts[0]!,
        into: c.slash,
        part: 'freed',
        about: BUST,
        by: { until: 'legs-meet' },
        step,
      },
    ];
  });

/** The angle that a turn closes, typed: its size read off the table before it, its sense tried. */
function typedBy(v: Variant, before: Row, turn: Extract<Command, { do: 'turn' }>): TurnBy {
  const work = tableOf(v, before);
  const dart = work.pieces.flatMap((p) => findDart(p, turn.dart) ?? [])[0]!;
  const share = 'share' in turn.by ? turn.by.share : 1;
  const size = dart.residual * share;
  const left = [size, -size].map((angle) => {
    const next = apply(work, { ...turn, by: { angle } });
    if ('refused' in next) return Infinity;
    return Math.abs(next.work.pieces.flatMap((p) => findDart(p, turn.dart) ?? [])[0]!.residual);
  });
  return { angle: left[0]! <= left[1]! ? size : -size };
}

/** Every turn by an angle that was typed, of the freed part or of the rest. */
export const typed =
  (part: 'freed' | 'rest'): Route =>
  (v, worked) => {
    const row: Command[] = [];
    for (const c of worked) {
      const turn = c.do === 'turn' ? { ...c, part } : c;
      row.push(turn.do === 'turn' ? { ...turn, by: typedBy(v, row, turn) } : turn);
    }
    return row;
  };

/** The same openings, the last one first. The share of what is still open is worked out anew. */
export const backwards: Route = (v, worked) => {
  const turns = turnsOf(worked);
  const darts = [...new Set(turns.map((t) => t.dart))].reverse();
  const again = darts.flatMap((dart) => {
    const own = turns.filter((t) => t.dart === dart);
    if (own.length === 1) return own;
    let open = 1;
    return own
      .map((t, i) => ({ t, share: v.shares[i]! }))
      .reverse()
      .map(({ t, share }, i): Command => {
        const by: TurnBy = i === own.length - 1 ? { until: 'legs-meet' } : { share: share / open };
        open -= share;
        return { ...t, by };
      });
  });
  const cuts = worked.filter((c) => c.do === 'cut-slash').reverse();
  return worked.flatMap((c, i): Row => {
    if (c.do === 'turn') return [];
    if (c.do !== 'cut-slash') return [c];
    // All cuts, then all turns, where the first cut was.
    return worked.findIndex((one) => one.do === 'cut-slash') === i ? [...cuts, ...again] : [];
  });
};

/** Finished in another order, with a wrong try before: what is drawn anew takes the place of what was there. */
export const redrawn: Route = (_v, worked) =>
  worked.flatMap((c): Row => {
    if (c.do === 'back-off')
      return [{ ...c, by: c.by + 7 }, { do: 'true-legs', dart: c.dart, step: c.step! }, c];
    if (c.do === 'cap') {
      const other = { centre: 'side', side: 'centre', up: 'down', down: 'up' } as const;
      return [{ do: 'true-legs', dart: c.dart, step: c.step! }, { ...c, fold: other[c.fold] }, c];
    }
    return [c];
  });

/** Backed off too far first, and trued twice. */
export const offTwice: Route = (_v, worked) =>
  worked.flatMap((c): Row => {
    if (c.do === 'true-legs') return [c, c];
    return c.do === 'back-off' ? [{ ...c, by: c.by + 7 }, c] : [c];
  });

const ENDS: readonly string[] = ['back-off', 'true-legs', 'smooth-seam', 'notch-seam'];

/** Darts finished from the last to the first, the side piece smoothed before the centre piece, the lowest notch of the seam set first. */
export const lastFirst: Route = (_v, worked) => {
  const ends = worked.filter((c) => ENDS.includes(c.do));
  return [
    ...worked.filter((c) => !ENDS.includes(c.do)),
    ...ENDS.flatMap((name) => ends.filter((c) => c.do === name).reverse()),
  ];
};

/** The line cut from end to end first; then only the connector is left to cut, and the part turns by itself. */
export const apartFirst: Route = (_v, worked) => {
  const step = 'move-along';
  const line = worked.filter((c) => c.do === 'separate').map((c): Command => ({ ...c, step }));
  return worked.flatMap((c): Row => {
    if (c.do === 'separate') return [];
    if (c.do !== 'slash') return [c];
    const { from: _from, ...slash } = c;
    return [...line, slash];
  });
};

/** Parted before the side dart is closed: the legs close on the side piece. Its marks are given when both are done. */
export const partedFirst: Route = (_v, worked) => {
  const [cuts, turns] = [ofStep(worked, 'move').filter((c) => c.do === 'cut-slash'), turnsOf(worked)];
  const step = 'cut-apart';
  return [
    ...ofStep(worked, 'working-dart', 'slash-line'),
    ...cuts,
    ...ofStep(worked, 'cut-apart'),
    ...turns.map(({ into: _into, ...turn }): Command => ({ ...turn, step })),
    ...ofStep(worked, 'smooth', 'seam-notches'),
  ];
};

/** Notches set elsewhere first, the lower one before the upper one, and one too many that is taken away again. */
export const notchedAnew: Route = (_v, worked) => {
  const notches = worked.filter((c): c is Extract<Command, { do: 'notch' }> => c.do === 'notch');
  const step = 'notches';
  return worked.flatMap((c): Row => {
    if (c.do !== 'notch') return [c];
    if (c !== notches[0]) return [];
    return [
      ...notches.map((one): Command => ({ ...one, at: one.at + 0.03 })),
      { do: 'notch', id: 'more', line: c.line, at: 0.1, step },
      ...[...notches].reverse(),
      { do: 'remove-notch', id: 'more', step },
    ];
  });
};

/** Pointed out from the last to the first, read in another order, opened out: all of it amiss at first, and then once more. */
export const atSecondTry: Route = (_v, worked) => {
  const wrong = (c: Command): Command => {
    if (c.do === 'identify') return { ...c, at: { landmark: 'right/shoulder-point', dy: 60 } };
    if (c.do === 'read') return { ...c, value: c.value / 2 };
    return c.do === 'open-out' ? { ...c, about: 'right/shoulder' } : c;
  };
  return ['find', 'read', 'open-out'].flatMap((step) => {
    const own = ofStep(worked, step);
    return [...own.map(wrong), ...[...own].reverse()];
  });
};

/** Edges pointed at elsewhere, and the numbers as the table writes them: tenths of a mm of the drill's paper, tenths of a degree. */
export const asWritten: Route = (v, worked) => {
  const mm = v.scale === 'half' ? 0.2 : 0.1;
  return worked.map((c): Command => {
    if (c.do === 'identify' && 'on' in c.at) return { ...c, at: { ...c.at, at: 0.31 } };
    if (c.do !== 'read') return c;
    const grain = c.what === 'dart-angle' ? Math.PI / 1800 : mm;
    return { ...c, value: Math.round(c.value / grain) * grain };
  });
};

/** What is taken out is typed as it was read off the table, and the back is trued last. */
export const takenOutByNumber: Route = (v, worked) => {
  const row: Command[] = [];
  for (const c of worked) {
    if (c.do === 'true') continue;
    if (c.do !== 'take-out') {
      row.push(c);
      continue;
    }
    const piece = tableOf(v, row).pieces.find(({ id }) => id === c.piece)!;
    row.push({ ...c, amount: piece.treatments.find(({ dart }) => dart === c.dart)!.excess });
  }
  return [...row, ...worked.filter((c) => c.do === 'true')];
};

export const inTurn =
  (...routes: readonly Route[]): Route =>
  (v, worked) =>
    routes.reduce((row, route) => route(v, row), worked);
