import type { Segment } from './types.ts';
import type { Meeting } from './contact.ts';
import { cubicMeetings } from './cubics.ts';
import { lineCubicMeetings, lineMeetings, sharedEnds } from './meet-line.ts';
export type { Meeting } from './contact.ts';

/**
 * Where two segments meet, in order along the first. Ends that are the same point, bit for bit, are met there exactly; an end
 * within 1e-9 mm of the other segment meets it at that end. A stretch on the same curve gives its two ends, marked
 * `overlap`, and beside them nothing.
 */
export function intersectSegments(s: Segment, u: Segment): Meeting[] {
  if (s.kind === 'line') return lineMeetings(s, u);
  const found = u.kind === 'line' ? lineCubicMeetings(u, s)?.map(swap) : cubicMeetings(s, u);
  const out = found ?? sharedEnds(s, u);
  return out.length > 1 ? out.sort((p, q) => p.t - q.t) : out;
}

const swap = ({ t, u, point, tangent, overlap }: Meeting): Meeting => ({
  t: u,
  u: t,
  point,
  tangent,
  overlap,
});
