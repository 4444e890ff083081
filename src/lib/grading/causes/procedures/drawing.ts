import { chainEnd, chainLength, chainStart } from '../../../geometry/chain.ts';
import { distance } from '../../../geometry/point.ts';
import { findEdge, landmark } from '../../../pattern/outline.ts';
import type { Anchor, Command } from '../../../recipe/types.ts';
import type { Procedure, Situation, Suspect } from './types.ts';

/** The sewn points that belong to a bust point: `right/sewn-point`, `right/waist-sewn-point`. */
const sewnPoints = ({ before }: Situation, bust: string): readonly string[] => {
  const side = bust.slice(0, bust.indexOf('/') + 1);
  return [`${side}sewn-point`, `${side}waist-sewn-point`].filter(
    (id) => before.opened !== undefined && landmark(before.opened, id) !== undefined,
  );
};

const isAt = (anchor: Anchor, end: string): anchor is Extract<Anchor, { landmark: string }> =>
  'landmark' in anchor && anchor.landmark.endsWith(end);

/** Every place where the right way uses the bust point, with the sewn point in its stead. */
function atSewnPoint(right: readonly Command[], sewn: string): readonly Command[] {
  const instead = (anchor: Anchor): Anchor =>
    isAt(anchor, '/bust-point') && !anchor.dx && !anchor.dy ? { landmark: sewn } : anchor;
  return right.map((c) => {
    if (c.do === 'extend-dart' || c.do === 'draw-slash') return { ...c, to: instead(c.to) };
    return c.do === 'turn' || c.do === 'pivot' ? { ...c, about: instead(c.about) } : c;
  });
}

/** Drawn to, or turned about, the point that the dart is sewn to. */
export const toSewnPoint: Procedure = (s) => {
  const busts = new Set<string>();
  for (const c of s.right) {
    const anchor =
      c.do === 'extend-dart' || c.do === 'draw-slash' ? c.to : 'about' in c ? c.about : undefined;
    if (anchor !== undefined && typeof anchor !== 'string' && isAt(anchor, '/bust-point'))
      busts.add(anchor.landmark);
  }
  return [...busts].flatMap((bust) =>
    sewnPoints(s, bust).map((sewn): Suspect => ({
      cause: { code: 'drawn-to-sewn-point' },
      commands: atSewnPoint(s.right, sewn),
    })),
  );
};

/** Drawn to the bust point of the other side. */
export const otherBust: Procedure = (s) => {
  const all = Object.keys(Object.assign({}, ...(s.before.opened?.parts ?? []).map((p) => p.landmarks)));
  const busts = all.filter((id) => id.endsWith('/bust-point'));
  return s.right.flatMap((c, i) =>
    c.do === 'draw-slash' && isAt(c.to, '/bust-point')
      ? busts
          .filter((id) => !('landmark' in c.to && c.to.landmark === id))
          .map((landmark): Suspect => ({
            cause: { code: 'other-bust-point' },
            commands: s.right.map((one, j) => (j === i ? { ...c, to: { landmark } } : one)),
          }))
      : [],
  );
};

type From = Extract<Command, { do: 'draw-slash' | 'pivot' }>;
const hasFrom = (c: Command): c is From => c.do === 'draw-slash' || c.do === 'pivot';

/** Ends of a block edge from which lengths are measured: the fraction at that end. */
const ENDS = [0, 1] as const;

/** A length along an edge taken at half scale for full size, or the other way round, from either end of it. */
export const scaleOfPlace: Procedure = (s) =>
  s.right.flatMap((c, i) => {
    if (!hasFrom(c) || !('on' in c.from)) return [];
    const { on, at } = c.from;
    return ENDS.flatMap((end) =>
      [0.5, 2].flatMap((factor): Suspect[] => {
        const fraction = end + (at - end) * factor;
        if (!(fraction > 0 && fraction < 1)) return [];
        const commands = s.right.map((one, j) => (j === i ? { ...c, from: { on, at: fraction } } : one));
        return [{ cause: { code: 'scale-mixed', amount: factor, unit: 'count' }, commands }];
      }),
    );
  });

/** Measured from the other end of the edge. */
export const otherEnd: Procedure = (s) =>
  s.right.flatMap((c, i): Suspect[] => {
    if (!hasFrom(c) || !('on' in c.from)) return [];
    const { on, at } = c.from;
    const commands = s.right.map((one, j) => (j === i ? { ...c, from: { on, at: 1 - at } } : one));
    return [{ cause: { code: 'from-other-end' }, commands }];
  });

/** The half mirrored across another straight edge than centre front. */
export const otherMirror: Procedure = (s) =>
  s.right.some((c) => c.do === 'open-out')
    ? (s.before.pieces.find((p) => p.id === 'front')?.parts[0]?.edges ?? [])
        .filter((e) => e.role !== 'dart-leg' && e.id !== 'centre-front')
        .map((e) => ({
          cause: { code: 'mirrored-about-other-edge' },
          commands: s.right.map((c) => (c.do === 'open-out' ? { ...c, about: e.id } : c)),
        }))
    : [];

/** The line begun on another edge, where the learner began it. */
export const otherEdge: Procedure = (s) =>
  s.own.flatMap((own): Suspect[] => {
    if (!hasFrom(own) || !('on' in own.from)) return [];
    const id = 'slash' in own ? own.slash : '';
    const { from } = own;
    return s.right.flatMap((c, i): Suspect[] => {
      if (!hasFrom(c) || c.slash !== id || !('on' in c.from) || c.from.on === from.on) return [];
      if (!findEdge(s.before.pieces[0]!, from.on)) return [];
      const commands = s.right.map((one, j) => (j === i ? { ...c, from } : one));
      return [{ cause: { code: 'other-edge' }, commands }];
    });
  });

/** How far along its edge, mm, the learner's line begins from where it should; for places that are off by no known procedure. */
export function offPlace(s: Situation): number | undefined {
  for (const line of s.rightly.lines) {
    const own = s.after.lines.find((l) => l.id === line.id);
    if (!own || chainLength(own.chain) === 0) continue;
    const off = distance(chainStart(own.chain), chainStart(line.chain));
    if (off > 0 || distance(chainEnd(own.chain), chainEnd(line.chain)) > 0) return off;
  }
  return undefined;
}
