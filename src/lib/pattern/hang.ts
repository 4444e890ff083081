import type { Hinge, Part, Piece } from './types.ts';
import { edgeOn, findDart } from './outline.ts';

/** Hinges of the part that was cut follow the sheet that now holds the dart's leg: `freed`, or the one that kept the name. */
export function rehang(hinges: readonly Hinge[], cutId: string, freed: Part, piece: Piece): readonly Hinge[] {
  return hinges.map((h) => {
    const at = h.parts.indexOf(cutId);
    if (at < 0) return h;
    const dart = findDart(piece, h.dart);
    const moved =
      dart !== undefined && (edgeOn(freed, dart.upper) ?? edgeOn(freed, dart.lower)) !== undefined;
    if (!moved) return h;
    const parts = at === 0 ? ([freed.id, h.parts[1]] as const) : ([h.parts[0], freed.id] as const);
    return { dart: h.dart, parts, intact: h.intact };
  });
}

/** Ids of the parts that hang together with one, directly or through others, by these pairs. */
export function together(part: string, pairs: readonly (readonly [string, string])[]): ReadonlySet<string> {
  const out = new Set([part]);
  for (let grew = true; grew;) {
    grew = false;
    for (const [a, b] of pairs) {
      if (out.has(a) === out.has(b)) continue;
      out.add(a).add(b);
      grew = true;
    }
  }
  return out;
}
