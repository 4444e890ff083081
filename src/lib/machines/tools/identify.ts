import type { Anchor } from '../../recipe/types.ts';
import { snap } from '../../recipe/snap.ts';
import { frontOf, middleOf, type Scene } from '../scene.ts';
import type { ToolSpec, ToolTarget } from '../tool-spec.ts';

/** What the course asks to be pointed out, in order. */
export const ASKED: readonly string[] = [
  'bust-point',
  'dart-upper',
  'dart-lower',
  'centre-front',
  'neck-point',
];

const askedOf = ({ asked }: Scene): readonly string[] => asked ?? ASKED;

/** What is pointed out next: the learner's choice, or the first that is still open. */
function next(scene: Scene): string {
  const all = askedOf(scene);
  return String(scene.options['what'] ?? all.find((what) => !scene.work.identified[what]) ?? all[0]);
}

/** Points at a landmark or an edge of the block and says what it is. */
export const identify: ToolSpec = {
  id: 'identify',
  options: (scene) => [{ id: 'what', kind: 'choice', value: next(scene), choices: askedOf(scene) }],
  targets: (scene) => {
    const front = frontOf(scene.work);
    if (!front) return [];
    return front.parts.flatMap((part) => [
      ...Object.entries(part.landmarks).map(([id, point]): ToolTarget => ({
        id: `landmark:${id}`,
        kind: 'landmark',
        point,
        piece: 'front',
        how: 'tap',
        ref: id,
      })),
      ...part.edges.map((edge): ToolTarget => ({
        id: `edge:${edge.id}`,
        kind: 'edge',
        point: middleOf(edge.chain),
        piece: 'front',
        how: 'tap',
        ref: edge.id,
      })),
    ]);
  },
  press: (_scene, _point, over) => (over.piece === 'front' ? { target: 'free', how: 'tap' } : undefined),
  propose: (scene, grip) => {
    const [kind, ref] = split(grip.target);
    const at: Anchor =
      kind === 'landmark'
        ? { landmark: ref }
        : kind === 'edge'
          ? { on: ref, at: 0.5 }
          : snap(scene.work, grip.at, scene.reach, ['landmark', 'edge'], 'front').anchor;
    return { command: { do: 'identify', what: next(scene), at } };
  },
};

function split(id: string): [string, string] {
  const colon = id.indexOf(':');
  return colon < 0 ? [id, ''] : [id.slice(0, colon), id.slice(colon + 1)];
}
