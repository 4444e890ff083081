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

/** Allowances added before the edge was trued. */
export const allowedTooEarly: Procedure = (s) => {
  const isTruing = (c: Command): boolean => c.do === 'true' || c.do === 'true-legs';
  if (!s.right.some(isTruing) || !s.right.some((c) => c.do === 'allow')) return [];
  const rest = s.right.filter((c) => !isTruing(c));
  return [{ cause: { code: 'allowance-before-truing' }, commands: rest }];
};

/** Cut lines walked instead of seam lines. */
export const cutLinesWalked: Procedure = (s) =>
  s.right.some((c) => c.do === 'walk')
    ? [
        {
          cause: { code: 'cut-line-walked' },
          commands: s.right.map((c): Command => (c.do === 'walk' ? { ...c, along: 'cut' } : c)),
        },
      ]
    : [];
