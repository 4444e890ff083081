import type { BlockForm } from '../../src/lib/pattern/block.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import type { Command, CommandName, Recipe, Work } from '../../src/lib/recipe/types.ts';
import '../../src/lib/recipe/commands/index.ts';

const WAIST = 'right/waist-dart';
const bust = { landmark: 'right/bust-point' } as const;

const WORKING: readonly Command[] = [{ do: 'extend-dart', dart: WAIST, to: bust }];
/** Half of the waist dart in the shoulder, over an alternate pivot, so that the legs there are not alike. */
const HALVED = (via: boolean): readonly Command[] => [
  ...WORKING,
  {
    do: 'draw-slash',
    slash: 'slash',
    from: { on: 'right/shoulder', at: 0.5 },
    ...(via && { via: { ...bust, dx: -16, dy: -12 } }),
    to: bust,
  },
  { do: 'cut-slash', slash: 'slash', past: 0 },
  { do: 'turn', dart: WAIST, into: 'slash', part: 'freed', about: bust, by: { share: 0.5 } },
];
const PARTED: readonly Command[] = [...HALVED(false), { do: 'part-at-darts', darts: ['slash', WAIST] }];

/** The half front after these commands, in its waist form where no other is named. */
export function tableOf(commands: readonly Command[], form: BlockForm = 'waist'): Work {
  const recipe: Recipe = {
    format: 'pin-and-pivot/recipe',
    version: 1,
    block: { figure: 'F2', form },
    fabric: 'knit',
    seed: 0,
    commands,
  };
  const { work, unfollowed } = replay(recipe);
  if (unfollowed.length > 0) throw new Error(JSON.stringify(unfollowed));
  return work;
}

/** The waist dart as the block draws it, to its sewn point. */
export const SEWN_TABLE = tableOf([]);

/** A table for each tool that finishes darts or makes something else of them. */
export const FINISH_TABLES: Readonly<Partial<Record<CommandName, Work>>> = {
  'back-off': tableOf(WORKING),
  'true-legs': tableOf([...HALVED(true), { do: 'back-off', dart: 'slash', by: 15 }]),
  cap: tableOf(WORKING),
  fullness: tableOf(HALVED(false)),
  'part-at-darts': tableOf(HALVED(false)),
  'smooth-seam': tableOf(PARTED),
  'notch-seam': tableOf(PARTED),
};
