import type { Chain, Point } from '../geometry/types.ts';
import type { Command, CommandName, Work } from '../recipe/types.ts';
import type { Options, OptionValue, Scene } from './scene.ts';

/** What kind of thing a target is; the table draws each kind in its own way. */
export type TargetKind =
  | 'landmark'
  | 'edge'
  | 'line'
  | 'point'
  | 'add'
  | 'notch'
  | 'tip'
  | 'scissors'
  | 'turn'
  | 'pin'
  | 'seam'
  | 'piece'
  | 'handle';

/** Something a tool can take hold of (`carry`) or choose (`tap`). Ids stay the same while the thing stays the same. */
export interface ToolTarget {
  readonly id: string;
  readonly kind: TargetKind;
  readonly point: Point;
  /** Piece on which it lies; the table shows it there. */
  readonly piece: string;
  readonly how: 'tap' | 'carry';
  /** Id of the edge, landmark, notch, dart or seam it stands for. */
  readonly ref?: string;
  readonly dart?: string;
  /** Place along what it lies on, mm. */
  readonly at?: number;
  readonly removable?: boolean;
  /** It stands for every place on an edge or a line: a pointer beside it means the place under the pointer. */
  readonly anywhere?: true;
  /** It already has what the tool gives (named, allowed, walked ...). */
  readonly done?: boolean;
}

/** What is held: where it was taken up and where it would come to lie, mm. */
export interface Grip {
  readonly target: string;
  readonly from: Point;
  readonly at: Point;
  readonly how: 'tap' | 'carry';
  /** What is pulled from it lies under the pointer, and not as far beside it as the pointer came down. */
  readonly under?: true;
  /** Piece and part under the pointer when it was taken up. */
  readonly piece?: string;
  readonly part?: string;
  /** The way of the hand since then, of a tool that follows it, mm. */
  readonly trail?: readonly Point[];
}

/** What letting go would do: give a command, or only change a setting of the tool. */
export type Proposal = { readonly command: Command } | { readonly options: Options };

export interface ToolOption {
  readonly id: string;
  readonly kind: 'choice' | 'length' | 'percent';
  readonly value: OptionValue;
  readonly choices?: readonly string[];
  /** By choice, the edge it begins on, where nothing else in its name tells it from the others. */
  readonly on?: Readonly<Record<string, string>>;
}

/** A way to act at once, shown as a button. */
export interface Act {
  readonly id: string;
  readonly about?: string;
  readonly command: Command;
}

/** A live measure: a dimension between two points, an angle at `from`, or (without `to`) words at `from`. mm, radians. */
export interface Reading {
  readonly id: string;
  readonly unit: 'mm' | 'rad';
  readonly value: number;
  readonly piece: string;
  readonly from?: Point;
  readonly to?: Point;
  readonly dart?: string;
  /** For an angle: the second ray's end. */
  readonly other?: Point;
}

export interface Over {
  readonly piece?: string;
  readonly part?: string;
}

/** One tool, as data and pure functions; `toolMachine` gives it its states. */
export interface ToolSpec {
  readonly id: CommandName;
  /** The whole way of the hand counts, not only where it has come to. */
  readonly trail?: true;
  readonly targets: (scene: Scene) => readonly ToolTarget[];
  /** A press on the paper away from all targets: what is then held. */
  readonly press?: (
    scene: Scene,
    point: Point,
    over: Over,
  ) => { target: string; how: 'tap' | 'carry' } | undefined;
  /** Where the held thing comes to lie when it is pulled to `point` (snap, slide along a line). Same for pointer and keys. */
  readonly pull?: (scene: Scene, grip: Grip, point: Point) => Point;
  /** Where it comes to lie after a key asked for `by` mm; default: moved by it, then pulled. */
  readonly nudge?: (scene: Scene, grip: Grip, by: Point) => Point;
  readonly propose: (scene: Scene, grip: Grip) => Proposal | undefined;
  readonly remove?: (scene: Scene, target: string) => Command | undefined;
  readonly options?: (scene: Scene) => readonly ToolOption[];
  /** The options that still hold once the table has changed; all of them where this is left out. */
  readonly stillChosen?: (was: Scene, now: Work) => Options;
  readonly acts?: (scene: Scene) => readonly Act[];
  /** What the scissors have cut so far, and on which piece. */
  readonly cut?: (scene: Scene, grip: Grip) => { readonly chain: Chain; readonly piece: string } | undefined;
  readonly readings?: (scene: Scene, work: Work, grip?: Grip) => readonly Reading[];
  readonly guide?: (scene: Scene, grip: Grip | undefined) => Circle | undefined;
  /** The block as it is pinned and swung, and what is traced of it. */
  readonly tracing?: (scene: Scene, grip: Grip | undefined) => Tracing | undefined;
}

/** A block that is pinned to the paper, swung, and traced in two goes: what lies still is traced first. mm, radians. */
export interface Tracing {
  readonly piece: string;
  readonly pin: Point;
  /** By how much the block is swung, positive clockwise on screen. */
  readonly angle: number;
  /** What of the outline is traced before it is swung, and after; both as the block lay at first. */
  readonly first: Chain;
  readonly second: Chain;
  /** The second is on the paper too, and not only to come. */
  readonly done?: true;
}

/** A circle to put something on, mm. */
export interface Circle {
  readonly centre: Point;
  readonly radius: number;
  readonly piece: string;
}
