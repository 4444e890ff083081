import type { Anchor } from '../../recipe/types.ts';
import { snap } from '../../recipe/snap.ts';
import { frontOf, middleOf, type Scene } from '../scene.ts';
import type { ToolSpec, ToolTarget } from '../tool-spec.ts';

/** What the first step asks to be pointed out, in order. */
export const ASKED = ['bust-point', 'dart-upper', 'dart-lower', 'centre-front', 'neck-point'] as const;

/** What is pointed out next: the learner's choice, or the first that is still open. */
const asked = (scene: Scene): string =>
  String(scene.options['what'] ?? ASKED.find((what) => !scene.work.identified[what]) ?? ASKED[0]);

/** Points at a landmark or an edge of the block and says what it is. */
export const identify: ToolSpec = {
  id: 'identify',
  options: (scene) => [{ id: 'what', kind: 'choice', value: asked(scene), choices: ASKED }],
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
    return { command: { do: 'identify', what: asked(scene), at } };
  },
};

function split(id: string): [string, string] {
  const colon = id.indexOf(':');
  return colon < 0 ? [id, ''] : [id.slice(0, colon), id.slice(colon + 1)];
}
