import { betweenPlaces, JOINT } from '../geometry/chain.ts';
import { parameterAtLength, segmentLength } from '../geometry/length.ts';
import { footOnChain, type Foot } from '../geometry/nearest.ts';
import { pointAt } from '../geometry/segment.ts';
import type { Chain, Place, Point } from '../geometry/types.ts';

/**
 * A chain of which several places or stretches are asked for: each of its segments is measured once, each place found and each stretch taken once. The
 * numbers are those of `placeAtLength`, `subchain` and `nearestOnChain`, bit for bit.
 */
export class Measured {
  readonly chain: Chain;
  /** mm by segment; NaN where it was not measured yet. */
  private readonly lengths: number[] = [];
  private readonly stretches: { readonly from: number; readonly to: number; readonly chain: Chain }[] = [];
  private readonly places: { readonly mm: number; readonly place: Place }[] = [];

  constructor(chain: Chain) {
    this.chain = chain;
    for (let i = 0; i < chain.length; i++) this.lengths.push(NaN);
  }

  private lengthOf(i: number): number {
    const known = this.lengths[i]!;
    if (!Number.isNaN(known)) return known;
    return (this.lengths[i] = segmentLength(this.chain[i]!));
  }

  /** Length in mm. */
  get length(): number {
    let sum = 0;
    for (let i = 0; i < this.chain.length; i++) sum += this.lengthOf(i);
    return sum;
  }

  /** The place `mm` along the chain; lengths before the start or past the end give the ends. */
  placeAt(mm: number): Place {
    for (const known of this.places) if (known.mm === mm) return known.place;
    const place = this.find(mm);
    this.places.push({ mm, place });
    return place;
  }

  private find(mm: number): Place {
    const { chain } = this;
    if (!(mm > JOINT)) return { segment: 0, t: 0, length: 0, point: chain[0]!.a };
    let before = 0;
    for (let i = 0; i < chain.length; i++) {
      const s = chain[i]!;
      const own = this.lengthOf(i);
      const rest = mm - before;
      if (rest < own - JOINT) {
        if (rest <= JOINT) return { segment: i, t: 0, length: before, point: s.a };
        const t = parameterAtLength(s, rest, own);
        return { segment: i, t, length: mm, point: pointAt(s, t) };
      }
      before += own;
    }
    const last = chain.length - 1;
    return { segment: last, t: 1, length: before, point: chain[last]!.d };
  }

  /** The part from `from` to `to`, mm along the chain. Throws RangeError when nothing lies between. */
  stretch(from: number, to: number): Chain {
    for (const known of this.stretches) if (known.from === from && known.to === to) return known.chain;
    const chain = this.between(from, to);
    this.stretches.push({ from, to, chain });
    return chain;
  }

  private between(from: number, to: number): Chain {
    const a = this.placeAt(from);
    const b = this.placeAt(to);
    if (!(b.length - a.length > JOINT)) throw new RangeError(`no chain lies between ${from} mm and ${to} mm`);
    return betweenPlaces(this.chain, a, b);
  }

  /** How far along the chain its point nearest to p lies, mm. */
  nearest(p: Point): number {
    return this.lengthTo(footOnChain(this.chain, p));
  }

  /** How far along the chain a foot on it lies, mm. */
  lengthTo({ segment, t }: Foot): number {
    let length = t === 1 ? this.lengthOf(segment) : segmentLength(this.chain[segment]!, 0, t);
    for (let i = 0; i < segment; i++) length += this.lengthOf(i);
    return length;
  }
}
