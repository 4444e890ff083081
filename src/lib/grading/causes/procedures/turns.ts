import { distance } from '../../../geometry/point.ts';
import { findDart, landmark } from '../../../pattern/outline.ts';
import type { Anchor, Command, TurnBy, Work } from '../../../recipe/types.ts';
import { ownFront } from '../../table.ts';
import { isMove, type Procedure, type Situation, type Suspect } from './types.ts';

type Move = Extract<Command, { do: 'turn' | 'pivot' }>;

/** The turns that the right way makes, by dart and slash, radians. */
function rightAngle({ rightly, before }: Situation, n: number): number | undefined {
  return rightly.turns[before.turns.length + n]?.angle;
}

/** The step with its n-th turn changed. */
function withMove(right: readonly Command[], n: number, change: (move: Move) => Move): readonly Command[] {
  let seen = -1;
  return right.map((c) => (isMove(c) && ++seen === n ? change(c) : c));
}

const moves = (right: readonly Command[]): readonly Move[] => right.filter(isMove);
const turnedBy = (angle: number): TurnBy => ({ angle });

/**
 * The dart doubles: the part was turned the wrong way, or the other part (or the other half of the outline traced after the swing) the way the
 * freed one should go. The two tables are congruent; which part it was, the learner's own turn says.
 */
export const wrongWay: Procedure = (s) => {
  const lie = ownFront(s.after).flatMap(({ parts }) => parts.map(({ id }) => id));
  return moves(s.right).flatMap((_, n) => {
    const angle = rightAngle(s, n);
    if (angle === undefined) return [];
    const [turned, meant] = [s.after, s.rightly].map((w) => w.turns[s.before.turns.length + n]?.part);
    const other = turned !== undefined && turned !== meant && lie.includes(meant ?? '');
    return [
      {
        cause: {
          code: other ? 'wrong-part' : 'wrong-way',
          amount: 2 * Math.abs(angle),
          unit: 'rad' as const,
        },
        commands: withMove(s.right, n, (c) => ({ ...c, by: turnedBy(-angle) })),
      },
    ];
  });
};

const residualOf = (work: Work, dart: string): number | undefined =>
  ownFront(work).flatMap((p) => findDart(p, dart) ?? [])[0]?.residual;

/** Stopped before the legs met, or went past that; by how much is read off the learner's table. */
export const wrongAngle: Procedure = (s): readonly Suspect[] => {
  const all = moves(s.right);
  const last = all.length - 1;
  const dart = all[last]?.dart;
  const angle = rightAngle(s, last);
  // A dart that nobody has turned yet is not one that was turned too little.
  if (dart === undefined || angle === undefined || !s.own.some(isMove)) return [];
  const left = (residualOf(s.after, dart) ?? 0) - (residualOf(s.rightly, dart) ?? 0);
  if (left === 0 || !Number.isFinite(left)) return [];
  const code = left > 0 ? 'not-closed' : 'closed-too-far';
  return [
    {
      fitted: true,
      cause: { code, amount: Math.abs(left), unit: 'rad' },
      commands: withMove(s.right, last, (c) => ({ ...c, by: turnedBy(angle - Math.sign(angle) * left) })),
    },
  ];
};

/** The pin stood beside the bust point: where, is where the learner put it. */
export const slipped: Procedure = (s): readonly Suspect[] => {
  const own = s.own.filter(isMove);
  return moves(s.right).flatMap((move, n) => {
    const fact = s.after.turns[s.before.turns.length + n];
    const angle = rightAngle(s, n);
    const about = own[n]?.about;
    const bust = 'landmark' in move.about ? bustOf(s.before, move.about.landmark) : undefined;
    if (!fact || about === undefined || angle === undefined || !bust) return [];
    const slip = offOf(about, s, n);
    if (!(slip > 0)) return [];
    const cause = { code: 'pivot-slipped', amount: slip, unit: 'mm' as const };
    // Until the legs come as near as they can, or by the angle that would have been right.
    return [move.by, turnedBy(angle)].map((by): Suspect => ({
      fitted: true,
      cause,
      commands: withMove(s.right, n, (c) => ({ ...c, about, by })),
    }));
  });
};

const bustOf = (work: Work, id: string) => ownFront(work).flatMap((piece) => landmark(piece, id) ?? [])[0];

/** How far the learner's pivot lay from the point that the right turn is about, mm, on the sheet it lay nearest to. */
function offOf(about: Anchor, { after, rightly, before }: Situation, n: number): number {
  if ('landmark' in about && about.dx === undefined && about.dy === undefined) return 0;
  const own = after.turns[before.turns.length + n];
  const right = rightly.turns[before.turns.length + n];
  return own && right ? distance(own.pivot, right.pivot) : 0;
}

/**
 * Another dart was closed than the one that was meant, or beside it, into the same opening; drawn up to the bust point first, where it was
 * not yet.
 */
export const otherDart: Procedure = (s) => {
  const darts = ownFront(s.before).flatMap((p) => p.darts);
  const all = moves(s.right);
  return all.flatMap((move, n) =>
    darts
      .filter(({ id }) => id !== move.dart)
      .flatMap(({ id: dart, state, bustPoint }): readonly Suspect[] => {
        const extend: Command = { do: 'extend-dart', dart, to: { landmark: bustPoint } };
        const instead = withMove(s.right, n, (c) => ({ ...c, dart }));
        const ways = [instead];
        if (move.do === 'turn' && !all.some((one) => one.dart === dart)) {
          const at = s.right.indexOf(move) + 1;
          ways.push([...s.right.slice(0, at), { ...move, dart, by: LEGS_MEET }, ...s.right.slice(at)]);
        }
        return ways.map((commands) => ({
          cause: { code: 'other-dart' },
          commands: state === 'sewn' ? [extend, ...commands] : commands,
        }));
      }),
  );
};

const LEGS_MEET: TurnBy = { until: 'legs-meet' };

/** Shares were given the other way round: each of two openings got the other's. */
export const sharesExchanged: Procedure = (s) => {
  const all = moves(s.right);
  return all.flatMap((first, n) =>
    all.slice(n + 1).flatMap((second, k): readonly Suspect[] => {
      const m = n + 1 + k;
      if (first.dart !== second.dart) return [];
      const [a, b] = [rightAngle(s, n), rightAngle(s, m)];
      // Two alike cannot be exchanged.
      if (a === undefined || b === undefined || Math.abs(a - b) < 1e-9) return [];
      // The last one takes what is left, however it is given.
      const other = withMove(s.right, n, (c) => ({ ...c, by: turnedBy(b) }));
      const commands = withMove(other, m, (c) => ('until' in c.by ? c : { ...c, by: turnedBy(a) }));
      return [{ cause: { code: 'shares-exchanged' }, commands }];
    }),
  );
};

/** The cut went through the point. */
export const cutThrough: Procedure = (s) =>
  s.right.some((c) => c.do === 'cut-slash' || c.do === 'slash')
    ? [
        {
          cause: { code: 'cut-through' },
          commands: s.right.map((c) => (c.do === 'cut-slash' || c.do === 'slash' ? { ...c, past: 3 } : c)),
        },
      ]
    : [];
