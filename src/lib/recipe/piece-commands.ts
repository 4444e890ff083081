import type { CornerForm } from '../pattern/types.ts';
import type { Anchor, Base, Fabric } from './command-parts.ts';

/** Cut the rest of the line; `front` becomes `upper` and `lower`. */
export interface Separate extends Base<'separate'> {
  readonly line: string;
}
/** Where a whole piece lies on the table: mm and radians from its own place; the last one counts. Never changes a mark. */
export interface PlacePiece extends Base<'place'> {
  readonly piece: string;
  readonly dx: number;
  readonly dy: number;
  readonly angle: number;
}
/** Close every opening on the screen and lay each rigid part of the piece on the block. */
export interface Overlay extends Base<'overlay'> {
  readonly piece: string;
}
/** Copy all pieces (ids gain `@<as>`), to treat them for another fabric. */
export interface CopyPieces extends Base<'copy'> {
  readonly as: Fabric;
}
/** Bridge the opening of a dart's connector and blend, from `before` mm to `after` mm along the seam on its two sides. */
export interface Bridge extends Base<'bridge'> {
  readonly piece: string;
  readonly dart: string;
  readonly before: number;
  readonly after: number;
}
/** Mark the bridged excess as eased between two notches. */
export interface EaseIn extends Base<'ease'> {
  readonly piece: string;
  readonly dart: string;
  readonly from: string;
  readonly to: string;
}
/** Take the excess out at one end of the seam: the measured excess, or a typed amount in mm; the end's edge is redrawn to its far end. */
export interface TakeOut extends Base<'take-out'> {
  readonly piece: string;
  readonly dart: string;
  readonly end: 'start' | 'end';
  readonly amount: 'measured' | number;
}
/** True the back's partner edge ('right/shoulder' | 'left/side' ...) to the front as it will be sewn. */
export interface TrueWithBack extends Base<'true'> {
  readonly edge: string;
  readonly as?: Fabric;
}
/** Mark a notch again on a trimmed seam: from the partner (omit `at`) or at mm from the trimmed end. */
export interface Renotch extends Base<'renotch'> {
  readonly piece: string;
  readonly notch: string;
  readonly at?: number;
}
export interface Allow extends Base<'allow'> {
  readonly piece: string;
  /** Seam group, e.g. 'style-line', 'right/shoulder', 'neckline', 'left/armhole', 'left/side', 'waist'. */
  readonly group: string;
  readonly width: number;
}
export interface ShapeCorner extends Base<'corner'> {
  readonly piece: string;
  readonly before: string;
  readonly after: string;
  readonly form: CornerForm;
  readonly first?: string;
}
export interface CarryNotches extends Base<'carry-notches'> {
  readonly piece: string;
}
export interface Label extends Base<'label'> {
  readonly piece: string;
  readonly name: string;
  readonly cut: number;
  readonly rightSideUp: boolean;
  /** Its centre edge is laid on the fold of the cloth; left out: it is not. */
  readonly onFold?: boolean;
}
/** Draw the grainline at `at`, `angle` radians from the fixed part's centre front direction (0 = along it), `length` mm. */
export interface DrawGrain extends Base<'grain'> {
  readonly piece: string;
  readonly at: Anchor;
  readonly angle: number;
}
/**
 * Walk a seam: 'style-line', 'right/shoulder', 'left/shoulder', 'right/side', 'left/side'. `along` says which line was walked;
 * `says` what the learner concluded.
 */
export interface Walk extends Base<'walk'> {
  readonly seam: string;
  readonly along: 'seam' | 'cut';
  readonly says: 'match' | 'eased' | 'differs';
  readonly as?: Fabric;
}
