import { chainLength } from '../geometry/chain.ts';
import { distance } from '../geometry/point.ts';
import { isBack } from '../machines/scene.ts';
import { outlineOf } from '../pattern/outline.ts';
import type { Piece } from '../pattern/types.ts';
import type { Work } from '../recipe/types.ts';
import { describe } from '../strings/commands.ts';
import { dartName, madeDart, nameOf } from '../strings/names.ts';
import { formatLength, type Units } from '../strings/units.ts';
import { whereIs } from '../table/targets.ts';
import { dartWords, slashWords } from './dart-words.ts';

export interface Measure {
  readonly label: string;
  readonly value: string;
}

/** Measures of one kind; groups without any are left out. */
export interface MeasureGroup {
  readonly title: string;
  readonly measures: readonly Measure[];
}

const filled = (groups: readonly MeasureGroup[]): readonly MeasureGroup[] =>
  groups.filter(({ measures }) => measures.length > 0);

/** A piece in words: its points, edges in outline order, lines, darts, notches and what was done with them. Full size. */
export function measuresOf(piece: Piece, units: Units): readonly MeasureGroup[] {
  const mm = (value: number): string => formatLength(value, units);
  // Parts that hang together have their bust point in common: it is told once. The back has a middle of its own, from
  // which places of the front cannot be told.
  const points = isBack(piece) ? [] : new Map(piece.parts.flatMap((part) => Object.entries(part.landmarks)));
  const lines = piece.parts.flatMap((part) => part.lines);
  const { label, grainline } = piece;
  return filled([
    {
      title: 'Points',
      measures: [...points].map(([id, point]) => ({ label: nameOf(id), value: whereIs(point, units) })),
    },
    {
      title: 'Edges',
      measures: outlineOf(piece).map(({ id, chain, partner }) => ({
        label: nameOf(id),
        value: mm(chainLength(chain)) + (partner ? `, sewn to ${nameOf(partner)}` : ''),
      })),
    },
    {
      title: 'Lines',
      measures: piece.parts.flatMap((part) =>
        part.lines.map((line) => ({
          label: nameOf(line.id),
          value: line.kind === 'slash' ? slashWords(piece, part, line, units) : mm(chainLength(line.chain)),
        })),
      ),
    },
    {
      title: 'Darts',
      measures: piece.darts.map((dart) => ({
        label: dart.residual === 0 ? dartName(dart.id) : madeDart(dart.id),
        value: dartWords(piece, dart, units),
      })),
    },
    { title: 'Made of the darts', measures: madeOf(piece, mm) },
    {
      title: 'Notches',
      measures: [
        ...lines.flatMap((line) =>
          line.notches.map(({ id, at }) => ({
            label: `notch ${id}`,
            value: `${mm(at)} along the ${nameOf(line.id)}`,
          })),
        ),
        ...piece.notches.map(({ id, at, edge, ghost }) => ({
          label: `notch ${id}${ghost ? ' (old place)' : ''}`,
          value: `${mm(at)} along ${nameOf(edge)}`,
        })),
      ],
    },
    {
      title: 'Leftover',
      measures: piece.treatments.map(({ dart, kind, excess, eased, trimmedEnd }) => ({
        label: `${nameOf(dart)} dart, ${kind}`,
        value:
          `excess ${mm(excess)}` +
          (eased ? `, between notches ${eased.from} and ${eased.to}` : '') +
          (trimmedEnd ? `, at the ${trimmedEnd === 'start' ? 'shoulder' : 'side'} end` : ''),
      })),
    },
    {
      title: 'Allowances',
      measures: Object.entries(piece.allowances).map(([group, width]) => ({
        label: nameOf(group),
        value: mm(width),
      })),
    },
    {
      title: 'Label',
      measures: [
        ...(label
          ? [
              {
                label: label.name,
                value: `cut ${label.cut}${label.onFold ? ' on the fold' : ''}${label.rightSideUp ? ', right side up' : ''}`,
              },
            ]
          : []),
        ...(grainline
          ? [
              {
                label: 'grainline',
                value: isBack(piece)
                  ? `${mm(distance(grainline.from, grainline.to))} long`
                  : `from ${whereIs(grainline.from, units)} to ${whereIs(grainline.to, units)}`,
              },
            ]
          : []),
      ],
    },
  ]);
}

/** What is on the table beside the pieces: the points of the style line as it was drawn, and the seams that were walked. */
export function othersOf(work: Work, units: Units): readonly MeasureGroup[] {
  const whole = work.pieces.some(({ id }) => id === 'front');
  return filled([
    {
      title: 'Points of the style line, as it was drawn',
      measures: work.lines
        .flatMap(({ kind, points }) => (whole && kind !== 'slash' ? points : []))
        .map((point, i) => ({ label: `line point ${i + 1}`, value: whereIs(point, units) })),
    },
    {
      title: 'Seams walked',
      measures: work.walked.map((walk) => ({ label: describe(walk, units), value: SAYS[walk.says] })),
    },
  ]);
}

const SAYS = { match: 'they match', eased: 'they match but for the ease', differs: 'they differ' } as const;

const FOLDS = { centre: 'to centre front', side: 'to the side', up: 'up', down: 'down' } as const;

/** What became of darts: sewn points, caps, fullness, smoothed corners. */
function madeOf(piece: Piece, mm: (length: number) => string): Measure[] {
  return [
    ...(piece.finished ?? []).map(({ dart, by, fold, trued }) => ({
      label: madeDart(dart),
      value:
        `sewn point ${mm(by)} from its tip` +
        (trued ? `, legs made alike by ${mm(trued)}` : '') +
        (fold ? `, cap folded ${FOLDS[fold]}` : ''),
    })),
    ...(piece.fullness ?? []).map(({ dart, as, fullness, tucks }) => ({
      label: madeDart(dart),
      value: `${tucks === undefined ? as : `${tucks} tucks`}, ${mm(fullness)}, between notches ${dart}-gather-1 and ${dart}-gather-2`,
    })),
    ...(piece.smoothed ?? []).map(({ at, reach, moved, shorter }) => ({
      label: `seam at the ${nameOf(at)}`,
      value: `smoothed ${mm(reach)} either way, moved by ${mm(moved)}, ${mm(shorter)} shorter`,
    })),
  ];
}
