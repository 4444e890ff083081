import { chainEnd, chainLength, chainStart } from '../geometry/chain.ts';
import { distance } from '../geometry/point.ts';
import { edgePlace } from '../machines/tools/slashes.ts';
import { legsOf } from '../pattern/outline.ts';
import { isSlash } from '../pattern/slash-line.ts';
import type { Dart, InnerLine, Part, Piece } from '../pattern/types.ts';
import { nameOf } from '../strings/names.ts';
import { formatAngle, formatLength, type Units } from '../strings/units.ts';
import { endName } from './forms/edge-place.ts';

/** Points this near are one, mm; what is open of a dart by less than this angle is nothing, radians. */
const SAME = 0.005;
const NOTHING = 1e-9;

/** A dart in words: what it is, how far it is open, and how wide at its edge. */
export function dartWords(piece: Piece, dart: Dart, units: Units): string {
  const mm = (value: number): string => formatLength(value, units);
  if (dart.state === 'closed' && Math.abs(dart.residual) < NOTHING) return 'closed, its legs meet';
  const legs = legsOf(piece, dart);
  const open = `${dart.state}, ${formatAngle(dart.residual)} open`;
  if (!legs) return open;
  const [a, b] = [legs.into, legs.outOf].map(({ chain }) => chainLength(chain));
  const long = Math.abs(a! - b!) < SAME ? mm(a!) : `${mm(a!)} and ${mm(b!)}`;
  if (isSlash(dart) && dart.residual === 0) return `cut, nothing turned into it, legs ${long} long`;
  const wide = distance(chainStart(legs.into.chain), chainEnd(legs.outOf.chain));
  return `${open}, ${mm(wide)} wide at its edge, legs ${long} long`;
}

/** A slash line in words: how long it is, where it begins and where it ends. */
export function slashWords(piece: Piece, part: Part, { chain }: InnerLine, units: Units): string {
  const mm = (value: number): string => formatLength(value, units);
  const end = chainEnd(chain);
  const from = edgePlace(piece, chainStart(chain));
  const begins = from
    ? [`from the ${nameOf(from.edge.id)}, ${mm(from.along)} from the ${endName(part, from.edge, 'start')}`]
    : [];
  const busts = Object.entries(part.landmarks)
    .filter(([id]) => id.endsWith('bust-point'))
    .map(([id, point]) => ({ id, off: distance(point, end) }));
  const bust = busts.sort((p, q) => p.off - q.off)[0];
  const ends = bust ? [`to ${bust.off < SAME ? '' : `${mm(bust.off)} beside `}the ${nameOf(bust.id)}`] : [];
  const bent = chain.length > 1 ? ['over an alternate pivot'] : [];
  return [mm(chainLength(chain)), ...begins, ...bent, ...ends].join(', ');
}
