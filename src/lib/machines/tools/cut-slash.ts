import { chainLength } from '../../geometry/chain.ts';
import { add, scale, sub, unit } from '../../geometry/point.ts';
import { line as straight } from '../../geometry/segment.ts';
import { frontOf, type Scene } from '../scene.ts';
import type { ToolSpec } from '../tool-spec.ts';
import { BEYOND, scissors, type CutPath } from './scissors.ts';
import { slashEnds, uncutSlashes } from './slashes.ts';

interface SlashPath extends CutPath {
  readonly end: string;
}

/** The ways of the scissors along the slash lines that are drawn: from the edge to the line's end, and on past it. */
export function slashPaths({ work }: Pick<Scene, 'work'>): readonly SlashPath[] {
  const front = frontOf(work);
  if (!front || !work.opened) return [];
  return uncutSlashes(front).map(({ id, part, line, from, via, to }) => {
    const past = add(to, scale(unit(sub(to, via ?? from)), BEYOND));
    const near = slashEnds(front, [part])[0]?.landmark ?? '';
    return {
      dart: id,
      piece: 'front',
      chain: [...line.chain, straight(to, past)],
      foot: 0,
      tip: chainLength(line.chain),
      end: near,
    };
  });
}

/** Cuts along a slash line to the dart's tip. */
export const cutSlash: ToolSpec = scissors({
  id: 'cut-slash',
  paths: slashPaths,
  command: (_scene, { dart }, past) => ({ do: 'cut-slash', slash: dart, past }),
  end: ({ end }) => end,
});
