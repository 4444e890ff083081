import type { Command } from '../../../recipe/types.ts';
import type { Procedure } from './types.ts';

const FOLDS = ['centre', 'side', 'up', 'down'] as const;

/** Folded another way. */
export const otherFold: Procedure = (s) =>
  s.right.some((c) => c.do === 'cap')
    ? FOLDS.map((fold) => ({
        cause: { code: 'folded-other-way' },
        commands: s.right.map((c): Command => (c.do === 'cap' ? { ...c, fold } : c)),
      }))
    : [];

/** Left pointing at the bust point. */
export const notBackedOff: Procedure = (s) =>
  s.right.some((c) => c.do === 'back-off')
    ? [
        {
          cause: { code: 'left-at-bust-point' },
          commands: s.right.map((c): Command => (c.do === 'back-off' ? { ...c, by: 0 } : c)),
        },
      ]
    : [];

/** Cut lines walked instead of seam lines, on the seams where the learner did so; what was concluded from it does not matter. */
export const cutLinesWalked: Procedure = (s) => {
  const cut = new Map(s.own.flatMap((c) => (c.do === 'walk' && c.along === 'cut' ? [[c.seam, c]] : [])));
  if (!s.right.some((c) => c.do === 'walk' && cut.has(c.seam))) return [];
  return [
    {
      cause: { code: 'cut-line-walked' },
      commands: s.right.map((c): Command => (c.do === 'walk' ? (cut.get(c.seam) ?? c) : c)),
    },
  ];
};
