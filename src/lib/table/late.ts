import type { Scene } from '../machines/scene.ts';
import type { ToolTarget } from '../machines/tool-spec.ts';
import type { CutLine } from '../pattern/allowance.ts';
import type { Point } from '../geometry/types.ts';
import type { Part, Piece } from '../pattern/types.ts';
import type { Work } from '../recipe/types.ts';
import type { Units } from '../strings/units.ts';
import type { Label } from './labels.ts';
import type { Guide, GuideView } from './guides.ts';
import type { Drawn, PartModel } from './model.ts';
import type { Overlaid } from './overlay.ts';

/** What of the picture comes with a later phase (`phases/`). Until that is fetched nothing on the table needs it. */
export const late: {
  /** A handle of which the name is asked for. */
  nameless?: (scene: Scene, target: ToolTarget, units: Units) => string;
  cutLine?: (piece: Piece) => CutLine | undefined;
  eased?: (piece: Piece) => readonly Drawn[];
  fulled?: (piece: Piece) => readonly Drawn[];
  /** A sheet of a piece whose edge was drawn over an opening. */
  through?: (piece: Piece, part: Part) => PartModel;
  /** Fronts that were parted, in the order in which they lie beside each other. */
  fromTheRight?: (fronts: readonly Piece[]) => readonly Piece[];
  /** What is drawn beside the pieces to see by. */
  guides?: (view: GuideView) => readonly Guide[];
  overlayOf?: (work: Work, pieces: readonly Piece[]) => Overlaid | undefined;
  overlayLabels?: (overlaid: Overlaid, toScreen: (p: Point) => Point, units: Units) => readonly Label[];
  pointedLabels?: (identified: Work['identified'], toScreen: (p: Point) => Point) => readonly Label[];
  notchNames?: (piece: Piece, toScreen: (p: Point) => Point) => readonly Label[];
} = {};
