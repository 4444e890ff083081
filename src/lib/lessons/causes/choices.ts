import type { Command } from '../../recipe/types.ts';

/** One number in a command that whoever gives it chooses: mm, radians, or a fraction of an edge or of an angle. */
export interface Choice {
  readonly value: number;
  /** Clearly another choice than `value` is this much more or less (ours): farther than a hand trembles, less than a step's usual range is wide. */
  readonly other: number;
  /** The command with another number. */
  readonly with: (value: number) => Command;
}

/** Along an edge of 100 to 400 mm this is 6 to 24 mm. */
const ALONG_EDGE = 0.06;
/** Along a style line of some 600 mm, 6 mm. */
const ALONG_LINE = 0.01;
/** Of a length: 1.9 mm of 3/8 in, more than the careful seam's 1.6 mm (trade notes, read). */
const OF_LENGTH = 0.2;
const OF_ANGLE = 0.1;
const ANGLE = 0.05;
/** Of a point that is backed off, mm: twice what a hand trembles; some steps give it 6 mm of room. */
const OFF = 3;
/** Where a length is nothing, mm. */
const FROM_NOTHING = 5;

const length = (value: number, change: (mm: number) => Command): Choice => ({
  value,
  other: value === 0 ? FROM_NOTHING : Math.abs(value) * OF_LENGTH,
  with: change,
});

/** What is chosen in a command. Kinds, names, folds and ways are no numbers and stand in none. */
export function choicesOf(c: Command): readonly Choice[] {
  switch (c.do) {
    case 'draw-slash':
    case 'pivot': {
      const { from } = c;
      const place: readonly Choice[] =
        'on' in from
          ? [{ value: from.at, other: ALONG_EDGE, with: (at) => ({ ...c, from: { ...from, at } }) }]
          : [];
      return c.do === 'pivot' ? [...place, ...turned(c)] : place;
    }
    case 'turn':
      return turned(c);
    case 'identify': {
      const { at } = c;
      if (!('on' in at)) return [];
      return [{ value: at.at, other: ALONG_EDGE, with: (v) => ({ ...c, at: { ...at, at: v } }) }];
    }
    case 'draw-line':
      return c.points.flatMap((point, i): readonly Choice[] => {
        if (!('on' in point)) return [];
        const moved = (at: number): Command => ({
          ...c,
          points: c.points.map((one, j) => (j === i ? { ...point, at } : one)),
        });
        return [{ value: point.at, other: ALONG_LINE, with: moved }];
      });
    case 'notch':
      return [{ value: c.at, other: ALONG_LINE, with: (at) => ({ ...c, at }) }];
    case 'connect': {
      const { square: _, ...share } = c;
      return [{ value: c.at, other: ALONG_EDGE, with: (at) => ({ ...share, at }) }];
    }
    case 'notch-seam':
      return [length(c.off, (off) => ({ ...c, off }))];
    case 'back-off':
      return [{ value: c.by, other: OFF, with: (by) => ({ ...c, by }) }];
    case 'allow':
      return [length(c.width, (width) => ({ ...c, width }))];
    case 'smooth-seam':
      return [length(c.reach, (reach) => ({ ...c, reach }))];
    case 'fullness':
    case 'bridge':
      return [
        length(c.before, (before) => ({ ...c, before })),
        length(c.after, (after) => ({ ...c, after })),
      ];
    case 'read':
      return [length(c.value, (value) => ({ ...c, value }))];
    default:
      return [];
  }
}

type Move = Extract<Command, { do: 'turn' | 'pivot' }>;

function turned(c: Move): readonly Choice[] {
  if ('share' in c.by)
    return [{ value: c.by.share, other: OF_ANGLE, with: (share) => ({ ...c, by: { share } }) }];
  if ('angle' in c.by)
    return [{ value: c.by.angle, other: ANGLE, with: (angle) => ({ ...c, by: { angle } }) }];
  return [];
}
