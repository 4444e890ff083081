/** The trade's words as the lesson uses them, one plain sentence each. */
export const GLOSSARY: Readonly<Record<string, string>> = {
  block: 'A block, or sloper, is the fitted body in paper, without design and without seam allowance.',
  'bodice front and back': 'The bodice is the part of a garment above the waist; it has a front and a back.',
  'centre front (CF)': 'Centre front is the line down the middle of the front, from neckline to waist.',
  'centre back (CB)': 'Centre back is the line down the middle of the back.',
  'neck point': 'The neck point is where the shoulder seam meets the neckline.',
  'bust point': 'The bust point, or apex, is the fullest place of the bust; darts of the front aim at it.',
  dart: 'A dart is a wedge that is folded away so that flat cloth rises to a curve.',
  'dart legs': 'The legs are the two sides of a dart; they are sewn to each other.',
  'dart point': 'The dart point is where the two legs meet.',
  'dart intake': 'The intake is the width of a dart from leg end to leg end.',
  'working dart':
    'The working dart has legs that run to the bust point; it is the one that is cut and moved.',
  'sewn dart': 'The sewn dart is backed off: it stops short of the bust point.',
  'dart cap':
    'The cap is the edge that a dart has at the seam: flat when the dart is folded, with a peak when it lies open.',
  pivot: 'To pivot is to turn paper about a point that stays where it is, here the bust point.',
  slash: 'To slash is to cut into the paper up to a point, and not through it.',
  'slash and spread': 'To slash and spread is to cut up to a point and to open the cut.',
  'style line': 'A style line, or design line, is a seam that is drawn for the look of the garment.',
  'princess line': 'A princess line is a seam that runs from an edge over the bust point to another edge.',
  connector: 'The connector is the short cut from a bust point to the nearest place of the style line.',
  'seam line': 'The seam line is where the needle goes.',
  'cut line': 'The cut line is where the shears go, outside the seam line by the allowance.',
  notch:
    'A notch is a mark across an edge that is matched with its partner in sewing, single on the front and double on the back.',
  'seam allowance': 'The seam allowance is the strip between seam line and cut line.',
  ease: 'Ease is extra length or width: in a garment, room to move; in a seam, a little more on one side, taken up without a fold.',
  gathers: 'Gathers are cloth drawn together along a thread until the edge is as short as its partner.',
  tucks: 'Tucks are small flat folds, side by side, that take up what an edge is too long.',
  leftover:
    'The leftover is what one edge of a seam is longer than its partner once a dart was moved into it.',
  grainline: 'The grainline is laid along the warp of a woven or along the wales of a knit.',
  'right side up (RSU)': 'Right side up means that the piece is cut with the outer side of the cloth on top.',
  'close and overlay':
    'To close and overlay is to close every opening and lay the piece on the block, to see that the fit is the same.',
  truing: 'Truing is to correct edges so that they are as long as their partners and run on smoothly.',
  blending: 'Blending is to draw a smooth line over a corner or a step.',
  'walking a seam': 'To walk a seam is to lay one edge along the other bit by bit, as they will be sewn.',
  toile: 'A toile is a trial garment in cheap cloth.',
  'half scale': 'At half scale every length is half of what it is on the garment; angles stay the same.',
};
