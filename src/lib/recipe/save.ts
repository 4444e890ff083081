import type { Attempt, BlockChoice, Command, Fabric, Recipe } from './types.ts';
import { FORMAT, VERSION } from './file-schema.ts';

/** Keys come in this order wherever they stand; what is not listed follows by name. */
const ORDER = [
  ...['format', 'version', 'lesson', 'block', 'fabric', 'seed', 'help', 'commands'],
  ...['figure', 'measures', 'bust', 'waist', 'napeToWaist', 'form'],
  ...[
    'do',
    'step',
    'id',
    'content',
    'what',
    'value',
    'piece',
    'line',
    'slash',
    'dart',
    'darts',
    'into',
    'part',
    'notch',
    'edge',
    'seam',
  ],
  ...[
    'points',
    'on',
    'landmark',
    'inside',
    'at',
    'dx',
    'dy',
    'weights',
    'from',
    'via',
    'to',
    'past',
    'about',
    'by',
  ],
];
const RANK = new Map(ORDER.map((key, rank) => [key, rank]));

function ordered(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(ordered);
  if (typeof value !== 'object' || value === null) return value;
  const keys = Object.keys(value).sort((a, b) => {
    const by = (RANK.get(a) ?? ORDER.length) - (RANK.get(b) ?? ORDER.length);
    return by !== 0 ? by : a < b ? -1 : 1;
  });
  return Object.fromEntries(keys.map((key) => [key, ordered((value as Record<string, unknown>)[key])]));
}

/** The text of a recipe or attempt file: the same for the same content, however its objects were built. */
export function toText(recipe: Recipe | Attempt): string {
  return `${JSON.stringify(ordered(recipe), null, 2)}\n`;
}

/** All that is handed in: what was done, on which block, for which lesson; nothing of how it was looked at. */
export function toAttempt(of: {
  readonly lesson: { readonly id: string; readonly content: number };
  readonly block: BlockChoice;
  readonly fabric: Fabric;
  readonly seed: number;
  readonly commands: readonly Command[];
}): Attempt {
  return {
    format: FORMAT,
    version: VERSION,
    lesson: { id: of.lesson.id, content: of.lesson.content },
    block: of.block,
    fabric: of.fabric,
    seed: of.seed,
    commands: of.commands,
  };
}
