import type { Chain, Point } from '../geometry/types.ts';
import type { EdgeNotch, InnerLine, Notch, Part, Piece } from './types.ts';
import { samePoint } from '../geometry/point.ts';
import { reverseChain } from '../geometry/chain-moved.ts';
import { shortSort } from '../geometry/short-sort.ts';
import type { Bank, CutStretch } from './cut.ts';
import { oneString } from './one-string.ts';
import { withLine } from './with-marks.ts';

/*
 * How the parts of a drawn line and of a connector are called once they are cut. Intervals are numbered over all feet and ends of the
 * line that are known, cut or not, so that it does not matter in which order slashes and the separation come.
 */

/**
 * Where the intervals of a line begin and end, mm along it, in order: its ends, the feet on it (but for that of the connector `but`),
 * and what was cut so far.
 */
export function boundaries(piece: Piece, lineId: string, but?: string): readonly number[] {
  const found: number[] = [];
  for (const part of piece.parts) {
    for (const l of part.lines) {
      if (l.id === lineId) {
        note(found, l.origin.from);
        note(found, l.origin.to);
      } else if (l.kind === 'connector' && l.line === lineId && l.id !== but && l.foot !== undefined)
        note(found, l.foot);
    }
    for (const e of part.edges) {
      if (e.role !== 'style-line' || e.origin.edge !== lineId) continue;
      note(found, e.origin.from);
      note(found, e.origin.to);
    }
  }
  return shortSort(found, (a, b) => a - b);
}

function note(found: number[], mm: number): void {
  if (!found.includes(mm)) found.push(mm);
}

/** The points of a stretch at those boundaries: its joints at the feet, and its ends. */
export function pointAtBoundary(part: Part, stretch: InnerLine, mm: number): Point | undefined {
  if (mm === stretch.origin.from) return stretch.chain[0]!.a;
  if (mm === stretch.origin.to) return stretch.chain[stretch.chain.length - 1]!.d;
  for (const l of part.lines)
    if (l.kind === 'connector' && l.line === stretch.id && l.foot === mm) return l.chain[0]!.d;
  return undefined;
}

/** The part of a chain between two of its joints. */
function slice(chain: Chain, from: Point, to: Point): Chain {
  let i = 0;
  while (i < chain.length && !samePoint(chain[i]!.a, from)) i++;
  let j = chain.length - 1;
  while (j > i && !samePoint(chain[j]!.d, to)) j--;
  return i === 0 && j === chain.length - 1 ? chain : chain.slice(i, j + 1);
}

export interface CutOfLine {
  /** In the direction of the cut. */
  readonly stretches: readonly CutStretch[];
  /** What of the stretch is not cut. */
  readonly rest: readonly InnerLine[];
  /** The notches that lay on what was cut, on both banks. */
  readonly notches: readonly EdgeNotch[];
}

/**
 * A cut along a stretch of a line from mm `from` to mm `to` of the whole line; backwards when `to` < `from`. Undefined when
 * these are no boundaries of the stretch.
 */
export function cutAlong(
  part: Part,
  stretch: InnerLine,
  all: readonly number[],
  from: number,
  to: number,
): CutOfLine | undefined {
  const low = Math.min(from, to);
  const high = Math.max(from, to);
  const own = all.filter((mm) => mm >= stretch.origin.from && mm <= stretch.origin.to);
  const points = own.map((mm) => pointAtBoundary(part, stretch, mm));
  const i = own.indexOf(low);
  const j = own.indexOf(high);
  if (i < 0 || j < 0 || points.some((p) => p === undefined)) return undefined;

  const stretches: CutStretch[] = [];
  const notches: EdgeNotch[] = [];
  for (let k = i; k < j; k++) {
    const n = all.indexOf(own[k]!) + 1;
    const chain = slice(stretch.chain, points[k]!, points[k + 1]!);
    const [idA, idB] = bankIds(stretch.id, n);
    const a = bank(stretch.id, idA, idB, own[k]!, own[k + 1]!);
    const b = bank(stretch.id, idB, idA, own[k]!, own[k + 1]!);
    if (from < to) stretches.push({ chain, left: a, right: b });
    else stretches.unshift({ chain: reverseChain(chain), left: b, right: a });
    const last = k === own.length - 2;
    for (const notch of stretch.notches) {
      if (notch.at < own[k]! || notch.at > own[k + 1]! || (notch.at === own[k + 1]! && !last)) continue;
      // Bank a runs against the line, bank b with it.
      notches.push(onBank(notch, own[k + 1]! - notch.at, a, stretch.id));
      notches.push(onBank(notch, notch.at - own[k]!, b, stretch.id));
    }
  }
  const rest: InnerLine[] = [];
  const keep = (p: number, q: number): void => {
    if (p >= q) return;
    const chain = slice(stretch.chain, points[own.indexOf(p)]!, points[own.indexOf(q)]!);
    const left = stretch.notches.filter((n) => n.at >= p && n.at <= q && !(n.at >= low && n.at <= high));
    rest.push(withLine(stretch, { chain, origin: { edge: stretch.id, from: p, to: q }, notches: left }));
  };
  keep(stretch.origin.from, low);
  keep(high, stretch.origin.to);
  return { stretches, rest, notches };
}

const onBank = ({ id, ghost }: Notch, at: number, { id: edge }: Bank, line: string): EdgeNotch => ({
  id,
  at,
  ghost,
  edge,
  line,
});

const bank = (line: string, id: string, partner: string, from: number, to: number): Bank => ({
  id,
  role: 'style-line',
  side: 'centre',
  origin: { edge: line, from, to },
  partner,
  dart: undefined,
});

/** What the two banks of a line's interval are called. Those of the line cut last are kept: see `oneString`. */
function bankIds(line: string, n: number): readonly [a: string, b: string] {
  if (line !== lastLine) {
    lastLine = line;
    lastIds = [];
  }
  return (lastIds[n] ??= [oneString(`${line}/${n}/a`), oneString(`${line}/${n}/b`)]);
}

let lastLine = '';
let lastIds: (readonly [string, string])[] = [];

/** The cut up a connector, from its foot to the dart's tip; bank a is on the left hand of someone walking tip to foot. */
export function cutUp(connector: InnerLine): CutStretch {
  const side = connector.dart === 'left' ? 'left' : 'right';
  const make = (which: 'a' | 'b', other: 'a' | 'b'): Bank => ({
    id: `${connector.id}/${which}`,
    role: 'connector',
    side,
    origin: connector.origin,
    partner: `${connector.id}/${other}`,
    dart: connector.dart,
  });
  return { chain: reverseChain(connector.chain), left: make('b', 'a'), right: make('a', 'b') };
}
