import { CUTTING, DART, type Hand, type Hands } from './hand.ts';
import { LINE_HANDS } from './line.ts';

const MOVE: Hand = { tools: ['slash', 'turn'], cautions: CUTTING };

/** What lies on the table already, and what makes it ready to be sewn. */
export const READY_HANDS: Hands = {
  'open-out': { tools: ['open-out'] },
  'style-line': LINE_HANDS['style-line']!,
  notches: LINE_HANDS.notches!,
  'working-darts': DART,
  connectors: LINE_HANDS.connector!,
  'first-dart': MOVE,
  'second-dart': MOVE,
  separate: LINE_HANDS.separate!,
  treat: { tools: ['copy', 'bridge', 'ease', 'take-out', 'true', 'renotch', 'overlay'], cautions: CUTTING },
  allowances: { tools: ['allow', 'corner', 'carry-notches'] },
  'label-and-grain': { tools: ['label', 'grain'] },
  'walk-the-seams': { tools: ['walk'] },
};
