import { distance, sub } from '../../geometry/point.ts';
import { angleBetween } from '../../geometry/trig.ts';
import { landmarkAt, textOf, type Worked } from './give.ts';

/**
 * Reads the three numbers of a dart off the block, measured at the bust point: `worked: {by: "read-dart", bust, ends: [a, b]}`,
 * the ids of the landmarks of the bust point and of the two leg ends.
 */
export const readDart: Worked = ({ work, rule, give }) => {
  const ends = rule.worked?.['ends'];
  const [bust, a, b] = [textOf(rule, 'bust'), ...(Array.isArray(ends) ? ends : [])].map((id) =>
    landmarkAt(work, String(id)),
  );
  if (!bust || !a || !b) return;
  give({ do: 'read', what: 'dart-angle', value: Math.abs(angleBetween(sub(a, bust), sub(b, bust))) });
  give({ do: 'read', what: 'leg-length', value: distance(bust, a) });
  give({ do: 'read', what: 'intake', value: distance(a, b) });
};
