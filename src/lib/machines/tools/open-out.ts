import { frontOf, isWhole, middleOf } from '../scene.ts';
import type { ToolSpec } from '../tool-spec.ts';

/** Mirrors the half front across a straight edge. Any straight edge may be picked; only one of them is right. */
export const openOut: ToolSpec = {
  id: 'open-out',
  targets: ({ work }) =>
    work.opened && isWhole(work.opened)
      ? []
      : (frontOf(work)?.parts[0]?.edges ?? [])
          .filter(
            (edge) => edge.role !== 'dart-leg' && edge.chain.every((segment) => segment.kind === 'line'),
          )
          .map((edge) => ({
            id: edge.id,
            kind: 'edge',
            point: middleOf(edge.chain),
            piece: 'front',
            how: 'tap',
            ref: edge.id,
          })),
  propose: (_scene, grip) => ({ command: { do: 'open-out', about: grip.target } }),
};
