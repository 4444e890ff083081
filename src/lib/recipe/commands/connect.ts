import { connectAt, connectedAgain } from '../connectors.ts';
import { connectors } from '../late-connectors.ts';
import { uncutFront } from '../lines.ts';
import type { Connect } from '../types.ts';
import { kind } from './kind.ts';

connectors.at = connectAt;
connectors.again = connectedAgain;

/** Draws the connector from a dart's tip to the line; drawing it again replaces. */
export const connect = kind<Connect>({
  name: 'connect',
  keys: { dart: 'id', line: 'id', at: 'fraction', square: 'flag?' },
  apply: (work, { dart, line, at, square }) => {
    const paper = uncutFront(work);
    if ('refused' in paper) return paper;
    const next = connectAt(work, dart, line, at, square);
    return 'refused' in next ? next : { work: next.ok };
  },
});
