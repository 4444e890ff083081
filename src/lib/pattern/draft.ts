import type { Chain, Point } from '../geometry/types.ts';
import type { Block, Dart, Edge, EdgeRole, Measures, Part, Piece, Side } from './types.ts';
import { add, distance, scale, sub, unit } from '../geometry/point.ts';
import { cubic, line } from '../geometry/segment.ts';
import { chainLength, pointAtLength } from '../geometry/chain.ts';
import { IDENTITY, applyTo, rotationByAngle } from '../geometry/isometry.ts';
import { angleBetween, cos, radians, sin } from '../geometry/trig.ts';
import { cutPart } from './cut.ts';
import { withTip } from './extend.ts';
import { unfitMeasure } from './figures.ts';
import { isRefused } from './outcome.ts';
import { outlineOf, startAt } from './outline.ts';
import { turnPart } from './turn.ts';

/*
 * The adult-woman prototype of Bunka Fashion College, Fundamentals of Garment Design (memory), in mm. Of its waist darts none
 * is drawn: the suppression stays as ease. Its back shoulder dart is taken out of the back shoulder's length but for the ease.
 * What the three measurements do not give (how the curves leave their ends) is ours and is said where it stands.
 */

/** How far the sewn dart stops short of the bust point, mm (1 in; memory: Joseph-Armstrong). */
const BACK_OFF = 25.4;
/** The back shoulder is left longer than the front by this, mm (textbooks without a back shoulder dart: 3 to 10; memory). */
const BACK_SHOULDER_EASE = 5;
/** Where the dart goes in the side seam: this part of the seam below the underarm (ours). */
const DART_DOWN_SIDE = 0.3;
/** The front neckline leaves the shoulder at 75°, the back at 105°: together smooth across the shoulder seam (ours). */
const NECK_ANGLE = 75;
/** Room between front and back where they lie side by side, mm (ours). */
const BESIDE = 80;

/** The lines and lengths of the draft in mm; x from centre front (front, negative) or from centre back (back, positive). */
export interface Construction {
  readonly halfWidth: number;
  readonly bustLine: number;
  readonly backWidth: number;
  readonly frontNeckUp: number;
  readonly chestWidth: number;
  readonly neckWidth: number;
  /** radians */
  readonly dartAngle: number;
  readonly suppression: number;
  /** The guide line outside the chest-width line, from centre front. */
  readonly guide: number;
  /** Side line, from centre front and from centre back. */
  readonly sideFront: number;
  readonly sideBack: number;
}

/** The draft's formulas (Bunka, memory), from the body's measures in mm. */
export function construction({ bust, waist }: Measures): Construction {
  const halfWidth = bust / 2 + 60;
  const backWidth = bust / 8 + 74;
  const chestWidth = bust / 8 + 62;
  const guide = chestWidth + bust / 32;
  const sideBack = (backWidth + halfWidth - guide) / 2;
  return {
    halfWidth,
    bustLine: bust / 12 + 137,
    backWidth,
    frontNeckUp: bust / 5 + 83,
    chestWidth,
    neckWidth: bust / 24 + 34,
    dartAngle: radians(bust / 40 - 2.5),
    suppression: halfWidth - (waist / 2 + 30),
    guide,
    sideFront: halfWidth - sideBack,
    sideBack,
  };
}

const at = (x: number, y: number): Point => ({ x, y });

/** Unit vector at an angle in degrees, clockwise on the screen from the x axis. */
const heading = (degrees: number): Point => at(cos(radians(degrees)), sin(radians(degrees)));

/** A cubic from a to d that leaves along u and arrives along v, with handles of k of the chord. */
function curve(a: Point, u: Point, d: Point, v: Point, k = 1 / 3): ReturnType<typeof cubic> {
  const h = k * distance(a, d);
  return cubic(a, add(a, scale(u, h)), sub(d, scale(v, h)), d);
}

function edge(id: string, role: EdgeRole, side: Side, chain: Chain, partner?: string, dart?: string): Edge {
  const origin = { edge: id, from: 0, to: chainLength(chain) };
  return {
    id,
    role,
    side,
    chain,
    origin,
    ...(partner !== undefined && { partner }),
    ...(dart !== undefined && { dart }),
  };
}

function piece(id: string, part: Part, darts: readonly Dart[]): Piece {
  return {
    id,
    parts: [part],
    hinges: [],
    darts,
    notches: [],
    treatments: [],
    allowances: {},
    corners: [],
    notchesCarried: false,
  };
}

const sheet = (id: string, edges: readonly Edge[], landmarks: Part['landmarks']): Part => ({
  id,
  edges,
  lines: [],
  landmarks,
  grain: 'kept',
  motion: IDENTITY,
});

/**
 * The half block for a body: front (wearer's right, centre front at x = 0, bust line at y = 0) with its bust dart moved from the
 * armhole to the side seam, and back beside it. Throws RangeError for measures that `unfitMeasure` names.
 */
export function draftBlock(measures: Measures): Block {
  const unfit = unfitMeasure(measures);
  if (unfit !== undefined) throw new RangeError(`the block cannot be drafted with this ${unfit}`);
  const c = construction(measures);
  const shoulderLength = (c.chestWidth - c.neckWidth) / cos(radians(22)) + 18;
  const front = draftFront(measures, c, shoulderLength);
  return {
    measures,
    front: front.piece,
    back: draftBack(measures, c, shoulderLength + BACK_SHOULDER_EASE),
    facts: {
      dartAngle: front.dartAngle,
      backOff: BACK_OFF,
      waistSuppression: c.suppression,
      backShoulderEase: BACK_SHOULDER_EASE,
    },
  };
}

/** How far the armhole's guide points lie out on their bisectors, before the addition. */
const bisector = (c: Construction): number => (c.halfWidth - c.guide - c.backWidth) / 6;

/** The level of the guide point of the armhole: 5 mm below the middle between bust line and 80 mm below the nape. */
const guideLevel = (c: Construction): number => -((c.bustLine - 80) / 2 - 5);

function draftFront(
  m: Measures,
  c: Construction,
  shoulderLength: number,
): { readonly piece: Piece; readonly dartAngle: number } {
  const waistY = m.napeToWaist - c.bustLine;
  const neckPoint = at(-c.neckWidth, -c.frontNeckUp);
  const neckCentre = at(0, -c.frontNeckUp + c.neckWidth + 5);
  const waistCentre = at(0, waistY);
  const sideWaist = at(-c.sideFront, waistY);
  const underarm = at(-c.sideFront, 0);
  const bust = at(-(c.chestWidth / 2 + 7), 0);
  const down = heading(180 - 22);
  const shoulder = add(neckPoint, scale(down, shoulderLength));

  // The armhole dart: its lower leg from the bust point to the guide point, its upper leg turned up by the dart's angle.
  const guide = at(-c.guide, guideLevel(c));
  const turn = rotationByAngle(bust, c.dartAngle);
  const guideUp = applyTo(turn, guide);
  const diagonal = (bisector(c) + 5) / Math.sqrt(2);
  const armholeGuide = at(-c.guide - diagonal, -diagonal);
  const slant = heading(135);

  // Square to the shoulder, touching near the chest-width line, and smooth where the dart will have closed.
  const inward = heading(180 - 22 - 90);
  const upper = [curve(guideUp, scale(rotated(c.dartAngle, at(0, 1)), -1), shoulder, scale(inward, -1))];
  const lower = [
    curve(underarm, at(1, 0), armholeGuide, scale(slant, -1)),
    curve(armholeGuide, scale(slant, -1), guide, at(0, -1)),
  ];
  const neckStart = heading(180 - 22 - NECK_ANGLE);
  const neckline = [
    cubic(
      neckPoint,
      add(neckPoint, scale(neckStart, 0.56 * (c.neckWidth + 5))),
      at(-0.52 * c.neckWidth, neckCentre.y),
      neckCentre,
    ),
  ];

  const edges = [
    edge('centre-front', 'centre-front', 'centre', [line(neckCentre, waistCentre)]),
    edge('right/waist', 'waist', 'right', [line(waistCentre, sideWaist)], 'back/waist'),
    edge('right/side', 'side', 'right', [line(sideWaist, underarm)], 'back/side'),
    edge('armhole/below', 'armhole', 'right', lower),
    edge('armhole/leg-lower', 'dart-leg', 'right', [line(guide, bust)], undefined, 'armhole'),
    edge('armhole/leg-upper', 'dart-leg', 'right', [line(bust, guideUp)], undefined, 'armhole'),
    edge('armhole/above', 'armhole', 'right', upper),
    edge('right/shoulder', 'shoulder', 'right', [line(shoulder, neckPoint)], 'back/shoulder'),
    edge('right/neckline', 'neckline', 'right', neckline),
  ];
  const landmarks = {
    'right/bust-point': bust,
    'right/neck-point': neckPoint,
    'right/shoulder-point': shoulder,
    'right/underarm': underarm,
    'right/side-waist': sideWaist,
    'neck-centre': neckCentre,
    'waist-centre': waistCentre,
  };
  return moveDartToSide(sheet('front', edges, landmarks), bust, waistY);
}

const rotated = (angle: number, p: Point): Point => applyTo(rotationByAngle(at(0, 0), angle), p);

/** Slash from the side to the bust point, close the armhole dart, rejoin: the same cut and turn that the learner makes. */
function moveDartToSide(
  part: Part,
  bust: Point,
  sideLength: number,
): { readonly piece: Piece; readonly dartAngle: number } {
  const side = part.edges.find((e) => e.id === 'right/side')!;
  const place = pointAtLength(side.chain, sideLength * (1 - DART_DOWN_SIDE));
  const legs = { into: 'right/dart-lower', outOf: 'right/dart-upper' };
  const leg = (id: string, partner: string) => ({
    id,
    role: 'dart-leg' as const,
    side: 'right' as const,
    origin: { edge: id, from: 0, to: distance(place, bust) },
    partner,
    dart: 'right',
  });
  const cut = cutPart(part, [
    { chain: [line(place, bust)], left: leg(legs.outOf, legs.into), right: leg(legs.into, legs.outOf) },
  ]);
  if (isRefused(cut)) throw new RangeError('the side dart cannot be cut');
  const armholeDart: Dart = {
    id: 'armhole',
    side: 'right',
    state: 'working',
    upper: 'armhole/leg-upper',
    lower: 'armhole/leg-lower',
    bustPoint: 'right/bust-point',
    residual: 0,
  };
  const freed = { ...cut.ok.left, id: 'freed' };
  const slashed = {
    ...piece('front', cut.ok.right, [armholeDart]),
    parts: [freed, cut.ok.right],
    hinges: [{ dart: 'armhole', parts: ['freed', 'front'] as const, intact: true }],
  };
  const turned = turnPart(slashed, {
    dart: 'armhole',
    part: 'freed',
    pivot: bust,
    by: { until: 'legs-meet' },
  });
  if (isRefused(turned)) throw new RangeError('the armhole dart cannot be closed');

  const parts = turned.ok.piece.parts;
  const edges = rejoin(outlineOf(turned.ok.piece));
  const upperEnd = edges.find((e) => e.id === 'right/dart-upper')!.chain[0]!.d;
  const dartAngle = angleBetween(sub(place, bust), sub(upperEnd, bust));
  const middle = unit(add(unit(sub(place, bust)), unit(sub(upperEnd, bust))));
  const sewn = add(bust, scale(middle, BACK_OFF));
  const dart: Dart = {
    id: 'right',
    side: 'right',
    state: 'sewn',
    upper: 'right/dart-upper',
    lower: 'right/dart-lower',
    bustPoint: 'right/bust-point',
    residual: dartAngle,
  };
  const landmarks = {
    ...parts[0]!.landmarks,
    ...parts[1]!.landmarks,
    'right/sewn-point': sewn,
    'right/dart-upper-end': upperEnd,
    'right/dart-lower-end': place,
  };
  return { piece: piece('front', withTip(sheet('front', edges, landmarks), dart, sewn), [dart]), dartAngle };
}

/** The outline from centre front, with the armhole in one edge again and the side in its two parts by name. */
function rejoin(outline: readonly Edge[]): Edge[] {
  const first = outline.findIndex((e) => e.id === 'centre-front');
  const out: Edge[] = [];
  for (let k = 0; k < outline.length; k++) {
    const e = outline[(first + k) % outline.length]!;
    if (e.id === 'right/side.1') out.push(edge('right/side-lower', 'side', 'right', e.chain, 'back/side'));
    else if (e.id === 'right/side.2')
      out.push(edge('right/side-upper', 'side', 'right', e.chain, 'back/side'));
    else if (e.id === 'armhole/below') continue;
    else if (e.id === 'armhole/above') {
      const below = outline.find((o) => o.id === 'armhole/below')!.chain;
      const chain = [...below, ...startAt(e.chain, below[below.length - 1]!.d)];
      out.push(edge('right/armhole', 'armhole', 'right', chain, 'back/armhole'));
    } else out.push(e);
  }
  return out;
}

function draftBack(m: Measures, c: Construction, shoulderLength: number): Piece {
  const left = -c.halfWidth - BESIDE;
  const p = (x: number, y: number): Point => at(left + x, y);
  const waistY = m.napeToWaist - c.bustLine;
  const nape = p(0, -c.bustLine);
  const neckWidth = c.neckWidth + 2;
  const neckPoint = p(neckWidth, -c.bustLine - neckWidth / 3);
  const shoulder = add(neckPoint, scale(heading(18), shoulderLength));
  const underarm = p(c.sideBack, 0);
  const sideWaist = p(c.sideBack, waistY);
  const waistCentre = p(0, waistY);
  const touch = p(c.backWidth, -(c.bustLine - 80) / 2);
  const diagonal = (bisector(c) + 8) / Math.sqrt(2);
  const armholeGuide = p(c.backWidth + diagonal, -diagonal);

  // Level at centre back, and at the shoulder the angle that makes a straight run with the front's.
  const neckEnd = heading(18 + (180 - NECK_ANGLE) + 180);
  const neckline = [curve(nape, at(1, 0), neckPoint, neckEnd, 0.4)];
  const armhole = [
    curve(shoulder, heading(18 + 90), touch, at(0, 1)),
    curve(touch, at(0, 1), armholeGuide, heading(45)),
    curve(armholeGuide, heading(45), underarm, at(1, 0)),
  ];
  const edges = [
    edge('back/centre-back', 'centre-back', 'centre', [line(waistCentre, nape)]),
    edge('back/neckline', 'neckline', 'centre', neckline),
    edge('back/shoulder', 'shoulder', 'centre', [line(neckPoint, shoulder)], 'right/shoulder'),
    edge('back/armhole', 'armhole', 'centre', armhole),
    edge('back/side', 'side', 'centre', [line(underarm, sideWaist)], 'right/side-upper'),
    edge('back/waist', 'waist', 'centre', [line(sideWaist, waistCentre)]),
  ];
  return piece(
    'back',
    sheet('back', edges, {
      'back/neck-centre': nape,
      'back/neck-point': neckPoint,
      'back/shoulder-point': shoulder,
      'back/underarm': underarm,
      'back/side-waist': sideWaist,
      'back/waist-centre': waistCentre,
    }),
    [],
  );
}
