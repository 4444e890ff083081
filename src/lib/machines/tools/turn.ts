import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { add, distance } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import type { Edge } from '../../pattern/types.ts';
import type { Command, TurnBy, Work } from '../../recipe/types.ts';
import type { Scene } from '../scene.ts';
import type { Grip, Reading, ToolOption, ToolSpec, ToolTarget } from '../tool-spec.ts';
import { choicesOf, mouthIn, openingsOf, type Opening } from './openings.ts';
import { numberedOn } from './slashes.ts';
import {
  byShare,
  nudgedRound,
  pinAnchor,
  pinAt,
  pinMoved,
  pinsAgain,
  pulledRound,
  shareId,
  shareOf,
  swingOf,
  wishOf,
  type Swing,
} from './swing.ts';

type Which = 'freed' | 'rest';
/** Angles nearer than this are one, radians. */
const SAME = 1e-9;

function heldBy(scene: Scene, grip: Grip): { opening: Opening; which: Which; swing: Swing } | undefined {
  const [, id, which] = grip.target.split(':');
  const opening = openingsOf(scene).find(({ dart }) => dart.id === id);
  if (!opening || (which !== 'freed' && which !== 'rest')) return undefined;
  const { legs, dart, tip } = opening;
  const [own, other] = which === 'freed' ? [legs.freed, legs.rest] : [legs.rest, legs.freed];
  const leg = { ...own, tip };
  return { opening, which, swing: swingOf(pinAt(scene, dart.id, tip), leg, other) };
}

const command = (scene: Scene, { dart, into, off }: Opening, part: string, by: TurnBy): Command => ({
  do: 'turn',
  dart: dart.id,
  ...(into && { into: into.id }),
  part,
  about: pinAnchor(scene, dart, off),
  by,
});

/** What is still open of a dart in some work, radians; negative where its legs overlap. */
const openOf = (work: Work, piece: string, dart: string): number =>
  work.pieces.find(({ id }) => id === piece)?.darts.find(({ id }) => id === dart)?.residual ?? 0;

/** Whether what opens overlaps instead: along a style line, where its dart is wider than before it was turned. */
function opensOver(work: Work, { piece, dart, into }: Opening): boolean {
  if (into) return openOf(work, piece.id, into.id) < -SAME;
  const before = work.turns.find((turn) => turn.dart === dart.id)?.before;
  return before !== undefined && openOf(work, piece.id, dart.id) > before + SAME;
}

/** How far the two sides stand apart at the edge that opens, the width opened; or how far they overlap. */
function openedIn(work: Work, opening: Opening): Reading[] {
  const { piece, dart, into, tip } = opening;
  const ends = into ? mouthIn(work, piece.id, into, tip) : styleGap(work, opening);
  if (!ends) return [];
  const value = distance(ends.from, ends.to);
  const id = opensOver(work, opening) ? 'overlap' : 'opened';
  return [{ id, unit: 'mm', value, piece: piece.id, ...ends, dart: into?.id ?? dart.id }];
}

/** Where a style line was slashed: the outer ends of the two edges of it that are sewn to each other. */
function styleGap(work: Work, { piece: { id }, dart, tip }: Opening): { from: Point; to: Point } | undefined {
  const piece = work.pieces.find((one) => one.id === id);
  const hinge = piece?.hinges.find((one) => one.dart === dart.id);
  const [a, b] = (hinge?.parts ?? []).map((part) => piece?.parts.find((one) => one.id === part));
  let widest: { from: Point; to: Point; reach: number } | undefined;
  for (const edge of a?.edges ?? []) {
    const partner: Edge | undefined = b?.edges.find((one) => one.id === edge.partner);
    if (!partner || edge.role !== 'style-line') continue;
    const [p, q] = [chainStart(edge.chain), chainEnd(edge.chain)];
    const outer = distance(p, tip) > distance(q, tip);
    const from = outer ? p : q;
    const to = outer ? chainEnd(partner.chain) : chainStart(partner.chain);
    const reach = distance(from, tip);
    if (!widest || reach > widest.reach) widest = { from, to, reach };
  }
  return widest;
}

/** Turns a part about the pin: pulled round, nudged, typed, or until the legs meet. The pin stands in the bust point unless it is moved. */
export const turn: ToolSpec = {
  id: 'turn',
  options: (scene) => {
    const [opening] = openingsOf(scene);
    if (!opening) return [];
    const { darts, into } = choicesOf(scene);
    const pick = (id: string, choices: readonly string[], value: string): ToolOption[] =>
      choices.length > 1 ? [{ id, kind: 'choice', value, choices, on: numberedOn(scene.work, choices) }] : [];
    const part = scene.options['part'] ?? 'freed';
    return [
      ...pick('dart', darts, opening.dart.id),
      ...pick('into', into, opening.into?.id ?? ''),
      { id: 'part', kind: 'choice', value: part, choices: ['freed', 'rest'] },
      ...(opening.into
        ? [{ id: shareId(opening.dart), kind: 'percent', value: shareOf(scene, opening.dart) } as const]
        : []),
    ];
  },
  // What was to be opened has been: the next turn opens what is next, unless it is chosen again.
  stillChosen: (was, now) => {
    const options = pinsAgain(was, now);
    const last = now.turns.length > was.work.turns.length ? now.turns.at(-1) : undefined;
    if (last?.into === undefined || last.into !== options['into']) return options;
    return Object.fromEntries(Object.entries(options).filter(([id]) => id !== 'into'));
  },
  acts: (scene) =>
    openingsOf(scene).map((opening) => {
      const { dart, into } = opening;
      const part = String(scene.options['part'] ?? 'freed');
      const share = into ? shareOf(scene, dart) : 1;
      return {
        id: `${into ? 'turn' : 'meet'}:${dart.id}`,
        about: into ? String(share) : dart.id,
        command: command(scene, opening, part, byShare(share)),
      };
    }),
  targets: (scene) =>
    openingsOf(scene).flatMap(({ piece, dart, legs, tip }): ToolTarget[] => {
      const base = { piece: piece.id, how: 'carry', dart: dart.id } as const;
      const handle = (which: Which): ToolTarget => ({
        ...base,
        id: `turn:${dart.id}:${which}`,
        kind: 'turn',
        point: legs[which].end,
        ref: which,
      });
      const point = pinAt(scene, dart.id, tip);
      return [
        handle('freed'),
        handle('rest'),
        { ...base, id: `pin:${dart.id}`, kind: 'pin', point, ref: dart.bustPoint },
      ];
    }),
  press: (scene, _point, over) => {
    for (const { dart, freed, rest } of openingsOf(scene))
      for (const [parts, which] of [
        [freed, 'freed'],
        [rest, 'rest'],
      ] as const)
        if (over.part !== undefined && parts.has(over.part))
          return { target: `turn:${dart.id}:${which}`, how: 'carry' };
    return undefined;
  },
  pull: (scene, grip, point) => {
    if (grip.target.startsWith('pin:')) {
      const tip = openingsOf(scene).find(({ dart }) => `pin:${dart.id}` === grip.target)?.tip;
      return tip && distance(tip, point) <= scene.reach ? tip : point;
    }
    const held = heldBy(scene, grip);
    return held ? pulledRound(scene, held.swing, grip, point) : grip.at;
  },
  nudge: (scene, grip, by) => {
    const held = heldBy(scene, grip);
    return held ? nudgedRound(held.swing, grip, by) : add(grip.at, by);
  },
  propose: (scene, grip) => {
    if (grip.target.startsWith('pin:')) {
      const opening = openingsOf(scene).find(({ dart }) => `pin:${dart.id}` === grip.target);
      return opening && pinMoved(opening.dart.id, opening.tip, grip.at);
    }
    const held = heldBy(scene, grip);
    const by = held && wishOf(held.swing, grip);
    return by && { command: command(scene, held.opening, held.which, by) };
  },
  readings: (scene, work) =>
    openingsOf(scene).flatMap((opening): Reading[] => {
      const { piece, dart, tip } = opening;
      const legs = mouthIn(work, piece.id, dart, tip);
      if (!legs) return openedIn(work, opening);
      const value = distance(legs.from, legs.to);
      const id = openOf(work, piece.id, dart.id) < -SAME ? 'overlap' : 'gap';
      return [{ id, unit: 'mm', value, piece: piece.id, ...legs, dart: dart.id }, ...openedIn(work, opening)];
    }),
};
