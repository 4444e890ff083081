import type { CommandName } from '../recipe/types.ts';

/** How the hand begins with each tool on the table. It comes with the lesson's text, not with the code of the page. */
export const HOW: Readonly<Record<CommandName, string>> = {
  identify: 'Choose on the table what “This is” names. The next one is then asked for by itself.',
  read: 'Pull a ruler from point to point; two from the same point show their angle too, and a third takes the first one up. Then enter the three numbers.',
  'open-out': 'Choose the edge to mirror across, by its diamond.',
  'draw-line':
    'Pull from the edge where the line begins to the edge where it ends. Then pull its rings to shape it, and its plus signs to add points.',
  'draw-curve':
    'Draw from edge to edge in one stroke, with mouse, pen or finger; draw again until it pleases you. “Style line” shapes it further, and draws by keys.',
  notch:
    'Pull a plus sign along the line to where the notch belongs, or tap the line there. Pull a notch to slide it.',
  'remove-notch': 'Choose the notch to take away.',
  'extend-dart':
    'Pull the point of a dart on to the cross of its bust point; where more darts are asked for, each of them.',
  connect: 'Pull from each bust point to the line. The foot slides along it and holds where it is nearest.',
  slash:
    'Pull the scissors from the edge along the line and up the connector. They hold at the bust point. Then take “Turn”.',
  'draw-slash':
    'Pull from the edge where the slash begins to the cross of the bust point. Its rings move it, its plus sign bends it at an alternate pivot. An end on a bust point stays there: to lead it elsewhere, take the line back with “Undo”.',
  'cut-slash':
    'Pull the scissors from the edge along the slash line. They hold at the bust point. Then take “Turn”.',
  pivot:
    'Tap the edge where the new dart is to be: the mark. A mark on the wrong edge is pulled to the right one by its ring. Then pull the block, or the arrow at a dart leg, round the pin until the legs meet. If you let go too soon, take it back with “Undo” and swing again.',
  'back-off':
    'Pull the point of a dart along its middle to where it is to end when sewn. The number says how far that is from the bust point, or from where the legs met.',
  'true-legs': 'Choose a dart whose legs are not equally long. Both are made as long as their mean.',
  cap: 'Say above the table which way the dart is folded, then choose the dart. If its sewn point is moved later, the cap is to be drawn anew.',
  fullness:
    'Say above the table what the fullness becomes. The two rings say how far the new edge reaches; then choose the dart. To draw it otherwise, take it back with “Undo” first.',
  'part-at-darts':
    'Choose the first dart, then the other one of the same bust point. The front is cut apart along both.',
  'smooth-seam': 'Pull the ring at the corner along the seam: so far the new curve reaches on either side.',
  'notch-seam':
    'Tap the plus sign twice for a notch at the bust point, pull it along the seam for another, or tap the seam. Both edges get it.',
  turn: 'Pull the part that the slash freed, or the arrow at its leg, round the pin until the legs meet.',
  separate: 'Choose the line by its diamond: it is cut from foot to foot. Then take “Close and overlay”.',
  place: 'Pull a piece to where you want it on the table.',
  overlay: 'Choose a piece by its ring. It is closed and laid on the block.',
  copy: 'Copy the pieces first. Then “Pieces for” says which of the two sets lies on the table. Treat both sets.',
  bridge:
    'The two rings say how far the blend reaches. Pull them if need be, then bridge each opening; where there are two sets, in both.',
  ease: 'Knit: pull from the notch before the bridge to the notch after it.',
  'take-out': 'Woven: choose the end of the seam that is to be trimmed by the leftover.',
  true: 'Woven: choose the edge that was redrawn; the back is then made just as long.',
  renotch: 'Woven: choose each notch that lies between the opening and the trimmed end.',
  allow: 'Type a width above the table, then choose the edges that get it. Edges that have one are filled.',
  corner:
    'Choose the form and which seam is sewn first, then the corner. A corner names its two seams when you point at it.',
  'carry-notches': 'Choose each piece by its ring.',
  label: 'Nothing is drawn for a label: write it in the forms.',
  grain: 'Pull a long line on each piece, straight along its centre front.',
  walk: 'Choose a seam, compare its two sides from notch to notch, then say above the table what you found.',
};
