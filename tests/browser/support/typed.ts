import type { Page } from '@playwright/test';
import { chainLength } from '../../../src/lib/geometry/chain.ts';
import { apply } from '../../../src/lib/recipe/apply.ts';
import '../../../src/lib/recipe/commands/index.ts';
import { anchorOn, resolveAnchor } from '../../../src/lib/recipe/anchors.ts';
import { findEdge } from '../../../src/lib/pattern/outline.ts';
import type { Dart } from '../../../src/lib/pattern/types.ts';
import type { Anchor, Command, TurnBy, Work } from '../../../src/lib/recipe/types.ts';

/** What has to be typed to give a command by the forms of the step: the form, and a value for each of its boxes. */
export interface Typed {
  readonly form: string;
  readonly values: Readonly<Record<string, string | boolean>>;
}

/** What the boxes are of: 2 where an exercise is measured on half-scale paper. */
let size = 1;
const mm = (value: number): string => (value / size).toFixed(4);
const degrees = (radians: number): string => ((radians * 180) / Math.PI).toFixed(4);

/** The way to type a command on the table `work`, in millimetres (of half-scale paper where the exercise is measured on it) and degrees. */
export function typedOf(command: Command, work: Work, scale: 'half' | 'full' = 'full'): Typed {
  size = scale === 'half' ? 2 : 1;
  const whole = work.lines[0] ? chainLength(work.lines[0].chain) : 0;
  switch (command.do) {
    case 'identify': {
      const at =
        'on' in command.at
          ? `edge:${command.at.on}`
          : 'landmark' in command.at
            ? `landmark:${command.at.landmark}`
            : '';
      return { form: 'identify', values: { what: command.what, at } };
    }
    case 'read': {
      const value = command.what === 'dart-angle' ? degrees(command.value) : mm(command.value);
      return { form: `read-${command.what}`, values: { value } };
    }
    case 'open-out':
      return { form: 'open-out', values: { about: command.about } };
    case 'draw-line':
      return { form: 'draw-line', values: lineValues(command, work) };
    case 'notch':
      return { form: 'notch', values: { at: mm(command.at * whole) } };
    case 'extend-dart': {
      const { bustPoint } = dartOn(work, command.dart);
      return { form: `extend-${command.dart}`, values: off(work, command.to, bustPoint, ['dx', 'dy']) };
    }
    case 'draw-slash': {
      const bust = endOf(work, command.to);
      return {
        form: 'draw-slash',
        values: {
          slash: command.slash,
          ...placed(work, command.from),
          to: `end:${bust}`,
          ...off(work, command.to, bust, ['dx', 'dy']),
          way: command.via ? 'bent' : 'straight',
          ...(command.via && off(work, command.via, bust, ['vx', 'vy'])),
        },
      };
    }
    case 'cut-slash':
      return { form: 'cut-slash', values: { slash: command.slash, past: mm(command.past) } };
    case 'pivot':
      return {
        form: 'pivot',
        values: {
          dart: command.dart,
          ...placed(work, command.from),
          part: command.part,
          ...off(work, command.about, dartOn(work, command.dart).bustPoint, ['dx', 'dy']),
          ...by(command.by),
          slash: command.slash,
        },
      };
    case 'back-off':
      return { form: `back-off-${command.dart}`, values: { by: mm(command.by) } };
    case 'true-legs':
      return { form: `true-legs-${command.dart}`, values: {} };
    case 'cap':
      return { form: `cap-${command.dart}`, values: { fold: command.fold } };
    case 'fullness': {
      const { dart, as, before, after, tucks } = command;
      const count = tucks === undefined ? {} : { tucks: String(tucks) };
      return { form: 'fullness', values: { dart, as, before: mm(before), after: mm(after), ...count } };
    }
    case 'part-at-darts':
      return { form: 'part-at-darts', values: { one: command.darts[0], two: command.darts[1] } };
    case 'smooth-seam':
      return { form: `smooth-${command.piece}`, values: { at: command.at, reach: mm(command.reach) } };
    case 'notch-seam':
      return {
        form: `notch-${command.line}`,
        values: { off: mm(Math.abs(command.off)), way: command.off < 0 ? 'second' : 'first' },
      };
    case 'remove-notch':
      return { form: 'remove-notch', values: { id: command.id } };
    case 'connect':
      return {
        form: `connect-${command.dart}`,
        values: command.square ? { how: 'square' } : { how: 'typed', at: mm(command.at * whole) },
      };
    case 'slash':
      return {
        form: 'slash',
        values: { dart: command.dart, from: command.from ?? 'line', past: mm(command.past) },
      };
    case 'turn': {
      const { dart, into, part, about } = command;
      const { bustPoint } = dartOn(work, dart);
      const way = into === undefined ? dart : `${dart}>${into}`;
      return {
        form: 'turn',
        values: { dart: way, part, ...off(work, about, bustPoint, ['dx', 'dy']), ...by(command.by) },
      };
    }
    case 'separate':
      return { form: 'separate', values: {} };
    case 'overlay':
      return { form: `overlay-${command.piece}`, values: {} };
    case 'copy':
      return { form: 'copy', values: { as: command.as } };
    case 'bridge':
      return {
        form: `bridge-${command.piece}`,
        values: { before: mm(command.before), after: mm(command.after) },
      };
    case 'ease':
      return { form: `ease-${command.piece}`, values: { from: command.from, to: command.to } };
    case 'take-out':
      return {
        form: `take-out-${command.piece}`,
        values: {
          end: command.end,
          ...(command.amount === 'measured'
            ? { how: 'measured' }
            : { how: 'typed', amount: mm(command.amount) }),
        },
      };
    case 'true':
      return { form: 'true', values: { edge: command.edge } };
    case 'renotch':
      return {
        form: `renotch-${command.piece}`,
        values: {
          notch: command.notch,
          ...(command.at === undefined ? { how: 'partner' } : { how: 'typed', at: mm(command.at) }),
        },
      };
    case 'allow':
      return {
        form: `allow-${command.piece}`,
        values: { group: command.group, width: mm(command.width) },
      };
    case 'corner': {
      const { before, after, form, first } = command;
      return {
        form: `corner-${command.piece}`,
        values: { corner: `${before}|${after}`, form, first: first === after ? 'after' : 'before' },
      };
    }
    case 'carry-notches':
      return { form: `carry-${command.piece}`, values: {} };
    case 'label':
      return {
        form: `label-${command.piece}`,
        values: {
          ...{ name: command.name, cut: String(command.cut), rightSideUp: command.rightSideUp },
          ...(command.onFold !== undefined && { onFold: command.onFold }),
        },
      };
    case 'grain': {
      const landmark = Object.keys(
        work.pieces.find(({ id }) => id === command.piece)?.parts[0]?.landmarks ?? {},
      )[0]!;
      const from = resolveAnchor(work, { landmark }, command.piece)!;
      const to = resolveAnchor(work, command.at, command.piece)!;
      const place = { landmark, dx: mm(to.x - from.x), dy: mm(to.y - from.y) };
      return { form: `grain-${command.piece}`, values: { ...place, angle: degrees(command.angle) } };
    }
    case 'walk':
      return {
        form: 'walk',
        values: { seam: command.seam, along: command.along, says: command.says },
      };
    default:
      throw new Error(`no form for ${command.do}`);
  }
}

function dartOn(work: Work, id: string): Dart {
  const dart = work.pieces.flatMap((piece) => piece.darts).find((one) => one.id === id);
  if (!dart) throw new Error(`there is no dart ${id}`);
  return dart;
}

/** The bust point that a slash goes to: the one that is named, else the right one. */
const endOf = (work: Work, to: Anchor): string =>
  'landmark' in to && to.landmark.endsWith('bust-point') ? to.landmark : 'right/bust-point';

/** How far a place lies from a landmark, in two boxes. */
function off(
  work: Work,
  place: Anchor,
  landmark: string,
  [x, y]: readonly [string, string],
): Record<string, string> {
  const from = resolveAnchor(work, { landmark }, 'front')!;
  const to = resolveAnchor(work, place, 'front')!;
  return { [x]: mm(to.x - from.x), [y]: mm(to.y - from.y) };
}

/** A place on an edge, from the edge's start. */
function placed(work: Work, place: Anchor): Record<string, string> {
  if (!('on' in place)) throw new Error('a place on an edge is expected');
  const edge = work.pieces.map((piece) => findEdge(piece, place.on)).find((one) => one !== undefined);
  if (!edge) throw new Error(`there is no edge ${place.on}`);
  return {
    from: `${place.on}|start`,
    at: mm(place.at * chainLength(edge.chain)),
    ...(size === 1 && { scale: 'full' }),
  };
}

function by(turn: TurnBy): Record<string, string> {
  if ('angle' in turn) return { by: 'angle', angle: degrees(turn.angle) };
  return 'share' in turn ? { by: 'share', share: (100 * turn.share).toFixed(6) } : { by: 'meet' };
}

/** The points of a line as they lie once it is drawn: in the boxes they are typed from centre front and bust line. */
function lineValues(command: Extract<Command, { do: 'draw-line' }>, work: Work): Record<string, string> {
  const drawn = apply(work, command);
  const line = 'work' in drawn ? drawn.work.lines[0] : undefined;
  if (!line || !('work' in drawn)) throw new Error('the sample line cannot be drawn');
  const values: Record<string, string> = {};
  line.points.slice(1, -1).forEach(({ x, y }, i) => {
    values[`x${i}`] = mm(x);
    values[`y${i}`] = mm(y);
  });
  (['start', 'end'] as const).forEach((end, i) => {
    const edge = line.ends[i]!;
    const at = anchorOn(work, edge, line.points.at(i === 0 ? 0 : -1)!) as { at: number };
    values[end] = edge;
    values[`${end}At`] = (100 * at.at).toFixed(4);
  });
  return values;
}

/** Fills a form of the open panel "By typed values" and sends it. */
export async function giveTyped(page: Page, { form, values }: Typed): Promise<void> {
  const box = page.locator(`form[data-form="${form}"]`);
  for (const [id, value] of Object.entries(values)) {
    const field = box.locator(`[id="${form}-${id}"]`);
    if (typeof value === 'boolean') {
      await field.setChecked(value);
      continue;
    }
    // A box whose condition is not met by the others is not shown.
    if ((await field.evaluate((one) => one.tagName)) === 'SELECT') await field.selectOption(value);
    else await field.fill(value);
  }
  await box.getByRole('button').click();
}

/** Opens a folded part of the step's panel; one that is open stays so. */
export async function unfold(page: Page, part: 'typed' | 'twin'): Promise<void> {
  const details = page.locator(`details[data-${part}]`);
  if ((await details.getAttribute('open')) === null) await details.locator('summary').click();
  // What is in it is fetched when it is asked for the first time.
  await details
    .locator(part === 'typed' ? 'form, p' : 'p.small')
    .first()
    .waitFor();
}
