import type { Chain, Isometry, Point } from '../geometry/types.ts';

/** The wearer's side; `centre` for edges and landmarks that belong to both halves. */
export type Side = 'left' | 'right' | 'centre';

export type EdgeRole =
  | 'centre-front'
  | 'centre-back'
  | 'neckline'
  | 'shoulder'
  | 'armhole'
  | 'side'
  | 'waist'
  | 'dart-leg'
  | 'style-line'
  | 'connector'
  | 'cap';

/** Where an edge came from: a stretch of a named parent, in mm of arc length from the parent's start. */
export interface Origin {
  readonly edge: string;
  readonly from: number;
  readonly to: number;
}

/**
 * A named stretch of an outline. Ids stay through every operation; a split edge `e` becomes `e.1`, `e.2` in
 * outline order. Block edges: `right/shoulder`, `left/armhole`, `right/side-upper`, `right/dart-lower` ...; on the back
 * piece `back/shoulder` ...; the banks of interval n of a cut line: `line/n/a` (on the left hand of someone who walks
 * the line from its start) and `line/n/b`; of a connector `connector-right/a`, `connector-right/b`; of a slash, which are
 * the legs of a dart from then on, `slash/a` (on the left hand of someone who walks from the edge to the tip) and `slash/b`. A dart's cap is
 * two edges `<group>/cap-<dart>.1` and `.2` with the fold between them; the edge cut for fullness is `<side>/gathered-<dart>`.
 */
export interface Edge {
  readonly id: string;
  readonly role: EdgeRole;
  readonly side: Side;
  /** mm, in the direction of the outline (clockwise on the screen). */
  readonly chain: Chain;
  readonly origin: Origin;
  /** Id of the edge it is sewn to, once that is known. */
  readonly partner?: string | undefined;
  /** For dart legs and connector banks: the dart they belong to. */
  readonly dart?: string | undefined;
  /** For the banks of a seam that was parted along darts: the dart leg that it was. */
  readonly leg?: Edge | undefined;
}

/** A notch on a line that is not cut yet, or on an edge. */
export interface Notch {
  readonly id: string;
  /** mm of arc length from the start of the line or of the edge's chain. */
  readonly at: number;
  /** Where it stood before it was marked again; drawn as a ghost. */
  readonly ghost?: boolean | undefined;
}

/** A notch on an edge of a piece; `edge` and `at` say where, `line` which line it was marked across. */
export interface EdgeNotch extends Notch {
  readonly edge: string;
  readonly line: string;
}

/** A line drawn inside a part: a style line (or what is left of it), a connector, a slash line, a taped pair of legs, the centre, a fold. */
export interface InnerLine {
  readonly id: string;
  readonly kind: 'style-line' | 'connector' | 'slash' | 'taped' | 'centre-front' | 'fold';
  readonly chain: Chain;
  /** The stretch of the whole drawn line that this is (whole line: from 0 to its length). */
  readonly origin: Origin;
  readonly dart?: string | undefined;
  /** `at` counts from the start of the whole drawn line, also on what is left of it. */
  readonly notches: readonly Notch[];
  /** Connectors only (their chain runs from the dart's tip to the foot): the line they meet and the foot, mm along it. */
  readonly line?: string | undefined;
  readonly foot?: number | undefined;
  /** Style lines only: what keeps the line from being cut; absent or empty when nothing does. */
  readonly faults?: readonly LineFault[] | undefined;
}

/**
 * What is wrong with a drawn line. `at` is where. `mm` of a line that stops short: how far its end is from the outline;
 * `end` which end.
 */
export interface LineFault {
  readonly code: 'line-stops-short' | 'line-leaves-piece' | 'line-crosses-itself' | 'line-meets-dart';
  readonly at: Point;
  readonly end?: 'start' | 'end';
  readonly mm?: number;
  readonly dart?: string;
}

/** One rigid sheet of paper: a closed simple outline and all that is drawn on it. */
export interface Part {
  readonly id: string;
  /** Closed, clockwise on the screen; each edge starts bit for bit where the one before it ends. */
  readonly edges: readonly Edge[];
  readonly lines: readonly InnerLine[];
  /** Landmarks on this sheet by id, e.g. `right/bust-point`, `left/underarm`, `right/neck-point`. */
  readonly landmarks: Readonly<Record<string, Point>>;
  /** `void` once the part was turned against the part that keeps the grain. */
  readonly grain: 'kept' | 'void';
  /** The whole motion since the part was cut free; for drawing ghosts, never for marking. */
  readonly motion: Isometry;
}

/**
 * A dart of a piece. Its two legs are edges `<side>/dart-upper` and `<side>/dart-lower` that meet at the tip; a slash to a dart's tip is
 * a dart itself, with its two banks as legs and no angle until something is turned into it.
 * `sewn`: drawn to the point short of the bust point; `working`: drawn to `tip` by the learner; `closed`: the legs
 * were brought together (exactly or nearly: `residual` says), taped.
 */
export interface Dart {
  readonly id: string;
  readonly side: Side;
  readonly state: 'sewn' | 'working' | 'closed';
  readonly upper: string;
  readonly lower: string;
  /** Landmark id of the bust point that it aims at. */
  readonly bustPoint: string;
  /** Signed angle that is still open between the legs, radians; negative where they overlap. Intake angle while not turned. */
  readonly residual: number;
}

/** Two parts that hang together in one point after a slash; `intact` false when the cut went through. */
export interface Hinge {
  readonly dart: string;
  /** First the freed part, then the part it hangs on. */
  readonly parts: readonly [string, string];
  readonly intact: boolean;
}

/** The leftover of a connector in a seam edge, and what was done with it. All lengths mm. */
export interface Treatment {
  readonly dart: string;
  readonly kind: 'bridged' | 'eased' | 'trimmed';
  /** Excess of this seam over its partner, measured on the edges after bridging and before trimming. */
  readonly excess: number;
  /** Seam edges replaced by the bridge, from/to in mm along the treated seam. */
  readonly bridge: { readonly before: number; readonly after: number };
  readonly eased?: { readonly from: string; readonly to: string } | undefined;
  readonly trimmedEnd?: 'start' | 'end' | undefined;
}

/** Which way a sewn dart is pressed: towards centre front or the side, upwards or downwards. */
export type Fold = 'centre' | 'side' | 'up' | 'down';

/** A dart that was drawn to its sewn point, and perhaps trued and capped. mm. */
export interface FinishedDart {
  readonly dart: string;
  /** Where the dart itself reaches to: its tip, or the middle between the alternate pivots of its legs. */
  readonly tip: Point;
  /** `by` mm from the tip on the middle of the dart. */
  readonly sewnPoint: Point;
  readonly by: number;
  /** How far the legs differed before they were trued. */
  readonly trued?: number | undefined;
  /** Which way it is folded, once it has a cap. */
  readonly fold?: Fold | undefined;
}

export type FullnessKind = 'gathers' | 'ease' | 'tucks';

/** What a dart's opening became where it is gathered, eased or tucked at the edge. mm. */
export interface Fullness {
  readonly dart: string;
  /** All darts whose openings the new edge spans, `dart` among them. */
  readonly darts: readonly string[];
  readonly as: FullnessKind;
  /** Id of the edge that was drawn over the opening. */
  readonly edge: string;
  /** Sewn length that the new edge stands for, on either side of the opening in the direction of the outline. */
  readonly before: number;
  readonly after: number;
  /** Length of the new edge less that sewn length. */
  readonly fullness: number;
  /** How many tucks take it up. */
  readonly tucks?: number | undefined;
}

/** A seam's corner that was smoothed. mm. */
export interface Smoothed {
  /** Landmark at which the corner was. */
  readonly at: string;
  readonly reach: number;
  /** Largest distance of the seam as it was from the seam as it is. */
  readonly moved: number;
  /** How much shorter the seam became. */
  readonly shorter: number;
}

export type CornerForm = 'mitre' | 'square' | 'reflect' | 'step';

/** A corner rule between two neighbouring seam groups (see `seamGroups`), in outline order. */
export interface CornerRule {
  readonly before: string;
  readonly after: string;
  readonly form: CornerForm;
  /** The group that is sewn first, for `square` and `reflect`. */
  readonly first?: string | undefined;
}

export interface PieceLabel {
  readonly name: string;
  readonly cut: number;
  readonly rightSideUp: boolean;
  readonly onFold?: boolean;
}

/** A grainline: two points of the piece in mm, from top to bottom. */
export interface Grainline {
  readonly from: Point;
  readonly to: Point;
}

export interface Piece {
  /** `front`, `back`; after separating `upper`, `lower`; a copy adds `@woven`. */
  readonly id: string;
  readonly parts: readonly Part[];
  readonly hinges: readonly Hinge[];
  readonly darts: readonly Dart[];
  readonly notches: readonly EdgeNotch[];
  /** The seam outline once a treatment changed it; before that it follows from the parts (`outlineOf`). */
  readonly seam?: readonly Edge[] | undefined;
  readonly treatments: readonly Treatment[];
  /** Darts drawn to their sewn points, openings drawn over, corners smoothed; absent while there are none. */
  readonly finished?: readonly FinishedDart[] | undefined;
  readonly fullness?: readonly Fullness[] | undefined;
  readonly smoothed?: readonly Smoothed[] | undefined;
  /** Width in mm by seam group. */
  readonly allowances: Readonly<Record<string, number>>;
  readonly corners: readonly CornerRule[];
  /** Notches were carried out to the cut line. */
  readonly notchesCarried: boolean;
  readonly label?: PieceLabel | undefined;
  readonly grainline?: Grainline | undefined;
}
