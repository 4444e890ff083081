import type { Dart, EdgeNotch, InnerLine } from './types.ts';

/** The inner line with some fields changed. */
export const withLine = (l: InnerLine, c: Partial<InnerLine>): InnerLine => ({
  id: c.id ?? l.id,
  kind: c.kind ?? l.kind,
  chain: c.chain ?? l.chain,
  origin: c.origin ?? l.origin,
  dart: c.dart ?? l.dart,
  notches: c.notches ?? l.notches,
  line: c.line ?? l.line,
  foot: c.foot ?? l.foot,
  faults: c.faults ?? l.faults,
});

/** The dart with some fields changed. */
export const withDart = (d: Dart, c: Partial<Dart>): Dart => ({
  id: c.id ?? d.id,
  side: c.side ?? d.side,
  state: c.state ?? d.state,
  upper: c.upper ?? d.upper,
  lower: c.lower ?? d.lower,
  bustPoint: c.bustPoint ?? d.bustPoint,
  residual: c.residual ?? d.residual,
});

/** The notch with some fields changed. */
export const withNotch = (n: EdgeNotch, c: Partial<EdgeNotch>): EdgeNotch => ({
  id: c.id ?? n.id,
  at: c.at ?? n.at,
  ghost: c.ghost ?? n.ghost,
  edge: c.edge ?? n.edge,
  line: c.line ?? n.line,
});
