import type { Piece } from './types.ts';

/** Body measurements of a block, mm. */
export interface Measures {
  readonly bust: number;
  readonly waist: number;
  readonly napeToWaist: number;
}

/** Where the front's bust dart lies: in the side seam, shared between side seam and waist, or in the waist below the bust point. */
export type BlockForm = 'side' | 'two-dart' | 'waist';

/** The drafted half block: front (the wearer's right half, x ≤ 0, centre front at x = 0) and back, as one-part pieces. */
export interface Block {
  readonly measures: Measures;
  readonly front: Piece;
  readonly back: Piece;
  /** Facts a step asks for or explains. mm and radians. */
  readonly facts: {
    /** Of all darts of the front together. */
    readonly dartAngle: number;
    /** Of the side dart; in the form without one, of the waist dart. */
    readonly backOff: number;
    readonly waistSuppression: number;
    readonly backShoulderEase: number;
  };
}
