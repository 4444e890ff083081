import { slashesFrom, slashesOn } from '../../grading/slashes.ts';
import { findDart } from '../../pattern/outline.ts';
import type { Anchor, TurnBy } from '../../recipe/types.ts';
import type { Worked } from './give.ts';

const listOf = (value: unknown): readonly string[] =>
  typeof value === 'string' ? [value] : Array.isArray(value) ? value.map(String) : [];

/**
 * Cuts the slashes that lie on the table and turns each of the darts into them: `worked: {by: "move-darts", darts, edges}`. With
 * several slashes from `edges` each gets the same share, or `shares` (of the whole angle); all of it goes, but for the share
 * `left`. Turns by intent (until the legs meet, a share), so that it is right on every body.
 */
export const moveDarts: Worked = (hand) => {
  const { rule, give } = hand;
  const edges = listOf(rule.worked?.['edges']);
  const slashes = slashesFrom(slashesOn(hand.work), edges).flatMap((s) => (s ? [s.line.id] : []));
  for (const slash of slashes) give({ do: 'cut-slash', slash, past: 0 });
  const given = rule.worked?.['shares'];
  const shares = Array.isArray(given) ? given.map(Number) : slashes.map(() => 1 / slashes.length);
  const stays = Number(rule.worked?.['left'] ?? 0);
  for (const dart of listOf(rule.worked?.['darts'])) {
    let open = 1;
    slashes.forEach((into, i) => {
      const found = hand.work.pieces.flatMap((p) => findDart(p, dart) ?? [])[0];
      if (!found) return;
      const about: Anchor = { landmark: found.bustPoint };
      const goes = (1 - stays) * (shares[i] ?? 0);
      const last = i === slashes.length - 1 && stays === 0;
      const by: TurnBy = last ? { until: 'legs-meet' } : { share: goes / open };
      give({ do: 'turn', dart, into, part: 'freed', about, by });
      open -= goes;
    });
  }
};
