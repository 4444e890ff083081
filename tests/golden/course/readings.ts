import type { Loose, Own } from './case.ts';

/** The value that the worked solution reads. */
type Read = (what: string) => number;

const readOf =
  ({ own }: Own): Read =>
  (what) => {
    const found = own.find((c) => c.do === 'read' && c.what === what);
    if (found?.do !== 'read') throw new Error(`${what} is not read`);
    return found.value;
  };

/** The worked reading, one number of it read otherwise. */
export const reading =
  (what: string, value: (own: Read) => number) =>
  (step: Own): readonly Loose[] =>
    step.own.map((c) => (c.do === 'read' && c.what === what ? { ...c, value: value(readOf(step)) } : c));

/** To half a degree and to a millimetre, as instruments are read. */
export const offARuler = ({ own }: Own): readonly Loose[] =>
  own.map((c) =>
    c.do !== 'read'
      ? c
      : {
          ...c,
          value: c.what === 'dart-angle' ? Math.round(c.value * 114.59156) / 114.59156 : Math.round(c.value),
        },
  );

/** From the bust point to the middle of the intake, mm. */
const height = (own: Read): number => Math.sqrt(own('leg-length') ** 2 - (own('intake') / 2) ** 2);

/** What the angle is at a point `backOff` mm short of the bust point: tan(a/2) = (c/2) / (h − backOff) (derived). */
export const angleAtSewnPoint = (own: Read, backOff: number): number =>
  2 * Math.atan(own('intake') / 2 / (height(own) - backOff));

/** What the leg is from there (derived: Pythagoras). */
export const legFromSewnPoint = (own: Read, backOff: number): number =>
  Math.sqrt((height(own) - backOff) ** 2 + (own('intake') / 2) ** 2);
