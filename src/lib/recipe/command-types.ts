import type {
  AddFullness,
  BackOff,
  Cap,
  Connect,
  CutSlash,
  DrawCurve,
  DrawLine,
  DrawSlash,
  ExtendDart,
  Identify,
  MarkNotch,
  NotchSeam,
  OpenOut,
  PartAtDarts,
  Pivot,
  Read,
  RemoveNotch,
  Slash,
  SmoothSeam,
  TrueLegs,
  Turn,
} from './front-commands.ts';
import type {
  Allow,
  Bridge,
  CarryNotches,
  CopyPieces,
  DrawGrain,
  EaseIn,
  Label,
  Overlay,
  PlacePiece,
  Renotch,
  Separate,
  ShapeCorner,
  TakeOut,
  TrueWithBack,
  Walk,
} from './piece-commands.ts';

export type * from './command-parts.ts';
export type * from './front-commands.ts';
export type * from './piece-commands.ts';

export type Command =
  | Identify
  | Read
  | OpenOut
  | DrawLine
  | DrawCurve
  | MarkNotch
  | RemoveNotch
  | ExtendDart
  | Connect
  | Slash
  | DrawSlash
  | CutSlash
  | Pivot
  | Turn
  | BackOff
  | TrueLegs
  | Cap
  | AddFullness
  | PartAtDarts
  | SmoothSeam
  | NotchSeam
  | Separate
  | PlacePiece
  | Overlay
  | CopyPieces
  | Bridge
  | EaseIn
  | TakeOut
  | TrueWithBack
  | Renotch
  | Allow
  | ShapeCorner
  | CarryNotches
  | Label
  | DrawGrain
  | Walk;

export type CommandName = Command['do'];
