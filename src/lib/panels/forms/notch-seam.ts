import { freeNotch, partedSides } from '../../machines/tools/notch-seam.ts';
import { seamEnds } from '../../pattern/notch-seam.ts';
import { nameOf } from '../../strings/names.ts';
import { choice, length, missingNumber, number, text, type FormMaker } from './form.ts';

/** One form for each seam that the front was parted along; both of its edges get the notch. */
export const notchSeam: FormMaker = (work) => {
  const sides = partedSides(work.pieces);
  return sides
    .filter(({ line }, i) => sides.findIndex((s) => s.line === line) === i)
    .flatMap(({ piece, line }) => {
      const [first, second] = seamEnds(piece, line) ?? [];
      if (first === undefined || second === undefined) return [];
      const fields = [
        length('off', 'This far from the bust point', 0),
        choice('way', 'towards', [
          { value: 'first', label: `the ${nameOf(first)}` },
          { value: 'second', label: `the ${nameOf(second)}` },
        ]),
      ];
      return [
        {
          id: `notch-${line}`,
          title: `Mark a notch on both edges of the ${nameOf(line)} seam`,
          fields,
          submit: 'Mark the notches',
          build: (values) => {
            const off = number(values, 'off') * (text(values, 'way') === 'second' ? -1 : 1);
            return (
              missingNumber(values, ['off'], fields) ?? {
                do: 'notch-seam',
                id: freeNotch(work.pieces),
                line,
                // Nothing is nothing on either side of the bust point.
                off: off === 0 ? 0 : off,
              }
            );
          },
        },
      ];
    });
};
