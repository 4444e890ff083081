import { chainLength } from '../geometry/chain.ts';
import { subchain } from '../geometry/subchain.ts';
import type { Chain } from '../geometry/types.ts';
import { frontOf } from '../machines/scene.ts';
import type { Tracing } from '../machines/tool-spec.ts';
import { tracingOf } from '../machines/tools/pivot.ts';
import { pinned } from '../machines/tools/pinned.ts';
import { edgePlace } from '../machines/tools/slashes.ts';
import { resolveAnchor } from '../recipe/anchors.ts';
import type { Pivot, Work } from '../recipe/types.ts';

/** When the first half is traced, and when the block has swung, as parts of the whole time. */
const TRACED = 0.35;
const SWUNG = 0.65;

/** A block that is pinned and swung, when fraction t of it has passed; undefined where that cannot be shown. */
export function swings(before: Work, after: Work, command: Pivot, t: number): Tracing | undefined {
  const front = frontOf(before);
  const fact = after.turns.at(-1);
  const dart = front?.darts.find(({ id }) => id === command.dart);
  const from = resolveAnchor(before, command.from, 'front');
  const mark = front && from && edgePlace(front, from, 'on' in command.from ? command.from.on : undefined);
  const block = dart && mark && pinned(front, dart, mark);
  if (!block || !fact) return undefined;
  const part = (from: number, to: number): number => Math.min(1, Math.max(0, (t - from) / (to - from)));
  const whole = tracingOf(block, command.part, fact.pivot, fact.angle * part(TRACED, SWUNG));
  return {
    ...whole,
    first: begun(whole.first, part(0, TRACED)),
    second: begun(whole.second, part(SWUNG, 1)),
    done: true,
  };
}

/** The beginning of a line; nothing of it when none is drawn. */
const begun = (chain: Chain, part: number): Chain =>
  part <= 0 ? [] : part >= 1 ? chain : subchain(chain, 0, Math.max(0.02, part * chainLength(chain)));
