import { chainEnd } from '../../geometry/chain.ts';
import { seamGroups } from '../../pattern/outline.ts';
import type { CornerForm } from '../../pattern/types.ts';
import type { ShapeCorner } from '../../recipe/types.ts';
import { pieceSet, type Scene } from '../scene.ts';
import type { ToolSpec, ToolTarget } from '../tool-spec.ts';
import { groupAt, groupTargets, pieceAnd } from './seam.ts';

const width = (scene: Scene): number => {
  const value = scene.options['width'];
  return typeof value === 'number' ? value : 10;
};

/** Gives a seam its width: press on the seam, or choose it. */
export const allow: ToolSpec = {
  id: 'allow',
  options: (scene) => [{ id: 'width', kind: 'length', value: width(scene) }],
  targets: (scene) =>
    pieceSet(scene.work, scene.fabric).flatMap((piece) =>
      groupTargets(piece, (group) => piece.allowances[group] !== undefined),
    ),
  press: (scene, point, over) => {
    const piece = pieceSet(scene.work, scene.fabric).find((one) => one.id === over.piece);
    const group = piece && groupAt(piece, point, 2 * scene.reach);
    return piece && group !== undefined ? { target: `group:${piece.id}:${group}`, how: 'tap' } : undefined;
  },
  propose: (scene, grip) => {
    const { piece, rest: group } = pieceAnd(grip.target);
    return { command: { do: 'allow', piece, group, width: width(scene) } };
  },
};

const FORMS: readonly CornerForm[] = ['mitre', 'square', 'reflect', 'step'];
const formOf = (scene: Scene): CornerForm =>
  FORMS.find((form) => form === scene.options['form']) ?? 'reflect';

/** Says how the allowance turns a corner: choose the form and which seam is sewn first, then the corner. */
export const corner: ToolSpec = {
  id: 'corner',
  options: (scene) => [
    { id: 'form', kind: 'choice', value: formOf(scene), choices: FORMS },
    {
      id: 'first',
      kind: 'choice',
      value: scene.options['first'] ?? 'before',
      choices: ['before', 'after', 'style-line'],
    },
  ],
  targets: (scene) =>
    pieceSet(scene.work, scene.fabric).flatMap((piece) => {
      const groups = seamGroups(piece);
      return groups.map((group, i): ToolTarget => {
        const ref = `${group.id}>${groups[(i + 1) % groups.length]!.id}`;
        return {
          id: `corner:${piece.id}:${ref}`,
          kind: 'handle',
          point: chainEnd(group.edges.at(-1)!.chain),
          piece: piece.id,
          how: 'tap',
          ref,
          done: piece.corners.some((rule) => `${rule.before}>${rule.after}` === ref),
        };
      });
    }),
  propose: (scene, grip) => {
    const { piece, rest } = pieceAnd(grip.target);
    const [before = '', after = ''] = rest.split('>');
    const form = formOf(scene);
    const sewn = scene.options['first'];
    const first = sewn === 'after' || sewn === after ? after : before;
    const command: ShapeCorner = { do: 'corner', piece, before, after, form };
    return { command: form === 'mitre' || form === 'step' ? command : { ...command, first } };
  },
};
