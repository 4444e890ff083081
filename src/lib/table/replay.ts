import { rotationByAngle } from '../geometry/isometry.ts';
import { chainLength } from '../geometry/chain.ts';
import { subchain } from '../geometry/subchain.ts';
import type { Chain } from '../geometry/types.ts';
import { apply } from '../recipe/apply.ts';
import type { Command, CommandName, Fabric, Refusal, Work } from '../recipe/types.ts';
import { withWork } from '../recipe/pieces.ts';
import { fallApart } from '../pattern/fall-apart.ts';
import { slashPaths } from '../machines/tools/cut-slash.ts';
import { cutPaths } from '../machines/tools/slash.ts';
import type { CutPath } from '../machines/tools/scissors.ts';
import type { Tracing } from '../machines/tool-spec.ts';
import { matrixOf } from './layout.ts';
import { swings } from './swings.ts';
import { swungParts, turnedParts } from './turned.ts';

/** One picture of a demonstration. */
export interface Frame {
  readonly work: Work;
  /** The command that is being shown, and its place in the list; -1 before the first one, which is then the command. */
  readonly command: Command;
  readonly index: number;
  readonly count: number;
  /** Why nothing came of the command. */
  readonly refused?: Refusal | undefined;
  /** The cloth whose pieces the command works on, where it says so. */
  readonly fabric: Fabric | undefined;
  /** SVG matrices of parts that are on their way, by part id. */
  readonly turning?: Readonly<Record<string, string>>;
  /** What the scissors have cut so far. */
  readonly cut?: { readonly chain: Chain; readonly piece: string };
  /** A block that is pinned and swung, with as much as is traced of it. */
  readonly tracing?: Tracing;
}

export interface Scene {
  readonly before: Work;
  readonly after: Work;
  readonly command: Command;
  readonly refused?: Refusal;
}

/**
 * The table before and after each command that can be followed, over the learner's own work; with `all` also each that cannot, and why:
 * then there is a scene for every command.
 */
export function scenesOf(start: Work, commands: readonly Command[], all = false): readonly Scene[] {
  const scenes: Scene[] = [];
  let before = start;
  for (const command of commands) {
    const applied = apply(before, command);
    if ('refused' in applied) {
      if (all) scenes.push({ before, after: before, command, refused: applied.refused });
      continue;
    }
    scenes.push({ before, after: applied.work, command });
    before = applied.work;
  }
  return scenes;
}

/** The table as it lies before the first command. */
export function frameBefore(scenes: readonly Scene[]): Frame | undefined {
  const [first] = scenes;
  if (!first) return undefined;
  const { before: work, command } = first;
  return { work, command, fabric: clothOf(command, work), index: -1, count: scenes.length };
}

const fallen = new WeakMap<Work, Work>();

/** A work whose sheets are divided where they touch themselves, the same one each time. */
function apart(work: Work): Work {
  let found = fallen.get(work);
  if (!found) fallen.set(work, (found = withWork(work, { pieces: work.pieces.map(fallApart) })));
  return found;
}

/** The picture of one scene when fraction t of it has passed. */
function pictureOf(
  { before: table, after, command, refused }: Scene,
  t: number,
): Pick<Frame, 'work' | 'turning' | 'cut' | 'tracing'> {
  if (t >= 1 || refused) return { work: after };
  if (command.do === 'pivot') {
    const tracing = swings(table, after, command, t);
    return tracing
      ? { work: table, tracing, turning: swungParts(table, tracing) }
      : { work: t < 0.3 ? table : after };
  }
  // Paper that hangs together in one point only comes apart there as it turns.
  const before = command.do === 'turn' ? apart(table) : table;
  const moved = turnedParts(before, after);
  const fact = after.turns.at(-1);
  if (moved && fact) {
    const matrix = matrixOf(rotationByAngle(fact.pivot, fact.angle * t));
    return { work: before, turning: Object.fromEntries(Object.keys(moved).map((id) => [id, matrix])) };
  }
  if (command.do === 'slash' || command.do === 'cut-slash') {
    const path: CutPath | undefined =
      command.do === 'slash'
        ? cutPaths({ work: before, fabric: 'knit', options: {}, reach: 0 }).find(
            (one) => one.dart === command.dart && (one.from ?? command.from) === (command.from ?? one.from),
          )
        : slashPaths({ work: before }).find((one) => one.dart === command.slash);
    if (!path) return { work: before };
    const whole = chainLength(path.chain);
    const to = Math.min(whole, Math.max(0.02, t * Math.max(1, path.tip + command.past)));
    return { work: before, cut: { chain: subchain(path.chain, 0, to), piece: path.piece } };
  }
  // What only appears is to be looked at once it is there.
  return { work: t < 0.3 ? before : after };
}

/** The cloth that a command works for: its own word, or that of the piece it names once there are two sets of them. */
function clothOf(command: Command, work: Work): Fabric | undefined {
  if ('as' in command && (command.as === 'knit' || command.as === 'woven')) return command.as;
  const piece = 'piece' in command ? command.piece : '';
  const copied = work.pieces.find(({ id }) => id.startsWith('upper@'))?.id.slice(6);
  if (!copied || !/^(upper|lower)/.test(piece)) return undefined;
  return (copied === 'woven') === piece.includes('@') ? 'woven' : 'knit';
}

/** How long each kind of command is shown, ms: what moves, what is cut, what only appears. */
const TIMES: Readonly<Partial<Record<CommandName, number>>> = {
  turn: 2600,
  pivot: 5200,
  slash: 2200,
  'cut-slash': 2200,
  'draw-slash': 1500,
  'part-at-darts': 1500,
  overlay: 2200,
  'draw-line': 1500,
  'draw-curve': 1500,
  'open-out': 1500,
  separate: 1500,
  bridge: 1500,
  ease: 1500,
  'take-out': 1500,
  true: 1500,
  allow: 500,
};
const timeOf = (command: Command): number => TIMES[command.do] ?? 900;

/** The frame `ms` after the start; with `still` each command is shown at once, and nothing moves. undefined once it is over. */
export function frameAt(scenes: readonly Scene[], ms: number, still: boolean): Frame | undefined {
  let from = 0;
  for (const [index, scene] of scenes.entries()) {
    const time = timeOf(scene.command);
    if (ms < from + time) {
      // A third of the time is for looking at what has come about.
      const t = still ? 1 : Math.min(1, (ms - from) / (time * 0.7));
      const { command, after, refused } = scene;
      const fabric = clothOf(command, after);
      return { ...pictureOf(scene, ease(t)), command, refused, fabric, index, count: scenes.length };
    }
    from += time;
  }
  return undefined;
}

const ease = (t: number): number => (t >= 1 ? 1 : t * t * (3 - 2 * t));

export const totalTime = (scenes: readonly Scene[]): number =>
  scenes.reduce((sum, { command }) => sum + timeOf(command), 0);

/**
 * Plays commands over a table: `onFrame` gets each picture, then undefined once it is over. Gives what stops it. With
 * reduced motion the steps follow each other without anything moving.
 */
export function play(
  start: Work,
  commands: readonly Command[],
  reducedMotion: boolean,
  onFrame: (frame: Frame | undefined) => void,
): () => void {
  const scenes = scenesOf(start, commands);
  let begun: number | undefined;
  let request = requestAnimationFrame(function tick(now: number) {
    begun ??= now;
    const frame = frameAt(scenes, now - begun, reducedMotion);
    onFrame(frame);
    if (frame) request = requestAnimationFrame(tick);
  });
  return () => cancelAnimationFrame(request);
}
