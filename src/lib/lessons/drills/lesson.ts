import type { CheckSpec, Tolerance } from '../../grading/types.ts';
import type { CommandName } from '../../recipe/types.ts';
import type { HintLadder, Lesson, LessonStep, WorkedBy } from '../types.ts';
import { toFragment } from './link.ts';
import type { Band, Variant } from './types.ts';

/** The steps that drills are made of. */
export type DrillStepId = 'working-dart' | 'slash-line' | 'move' | 'pivot';

/** The words of a drill; they live with the other sentences. */
export interface DrillWords {
  readonly title: (variant: Variant) => string;
  readonly summary: (variant: Variant) => string;
  readonly step: (
    variant: Variant,
    id: DrillStepId,
  ) => { readonly title: string; readonly text: readonly string[]; readonly hints: readonly HintLadder[] };
}

/** Raised when the rules of drills change, so that an older file can be told. */
export const DRILL_CONTENT = 1;

const WIDTH: Readonly<Record<Band, number>> = { wide: 2, usual: 1, strict: 0.5 };

const CUTTING: readonly string[] = ['scissors', 'blade', 'school-rules'];

/** The id of a drill's lesson, as attempts and progress name it: `drill-` and its fragment with hyphens. */
export const drillId = (variant: Variant): string =>
  `drill-${toFragment(variant.drill).replaceAll('.', '-')}`;

const bustOf = (): string => 'right/bust-point';

/** Tolerances at the drill's band; mm at full size (trade notes: 1.6 careful, 3.2 acceptable, on the seam). */
function within(variant: Variant, value: number, reason: string): Tolerance {
  return { value: value * WIDTH[variant.drill.band], reason };
}

function workingDart(v: Variant): Rules {
  return {
    tools: ['extend-dart'],
    cautions: [],
    checks: [
      {
        check: 'darts-extended',
        names: { darts: v.darts },
        tolerances: { tip: within(v, 1.6, 'pencil-line') },
      },
    ],
    worked: {
      by: 'commands',
      commands: v.darts.map((dart) => ({ do: 'extend-dart', dart, to: { landmark: bustOf() } })),
    },
  };
}

const drawn = (v: Variant): CheckSpec => ({
  check: 'slash-drawn',
  names: {
    edges: v.goals.map((g) => g.edge),
    from: v.goals.map((g) => g.from),
    bust: bustOf(),
  },
  numbers: Object.fromEntries(
    v.goals.flatMap((g, i) => [
      [`least-${i + 1}`, g.fraction],
      [`most-${i + 1}`, g.fraction],
    ]),
  ),
  tolerances: { place: within(v, 3.2, 'passable-seam'), tip: within(v, 1.6, 'pencil-line') },
});

const slashOf = (v: Variant, i: number): string => (v.goals.length === 1 ? 'slash' : `slash-${i + 1}`);

function slashLine(v: Variant): Rules {
  return {
    tools: ['draw-slash'],
    cautions: [],
    checks: [drawn(v)],
    worked: {
      by: 'commands',
      commands: v.goals.map((g, i) => ({
        do: 'draw-slash',
        slash: slashOf(v, i),
        from: { on: g.edge, at: g.at },
        to: { landmark: bustOf() },
      })),
    },
  };
}

const moved = (v: Variant): CheckSpec => ({
  check: 'dart-moved',
  names: { darts: v.darts, edges: v.goals.map((g) => g.edge) },
  numbers: Object.fromEntries(v.shares.map((share, i) => [`share-${i + 1}`, share])),
  tolerances: {
    pivot: within(v, 0.5, 'pin-hole'),
    gap: within(v, 3.2, 'passable-seam'),
    opening: within(v, 3.2, 'passable-seam'),
  },
});

function move(v: Variant): Rules {
  const edges = v.goals.map((g) => g.edge);
  return {
    tools: ['cut-slash', 'turn'],
    cautions: CUTTING,
    checks: [moved(v)],
    worked: { by: 'move-darts', darts: v.darts, edges, shares: v.shares },
  };
}

function pivot(v: Variant): Rules {
  const [goal] = v.goals;
  return {
    tools: ['pivot'],
    cautions: [],
    checks: [drawn(v), moved(v)],
    worked: {
      by: 'commands',
      commands: v.darts.map((dart) => ({
        do: 'pivot',
        dart,
        slash: 'slash',
        from: { on: goal!.edge, at: goal!.at },
        about: { landmark: bustOf() },
        by: { until: 'legs-meet' },
        part: 'freed',
      })),
    },
  };
}

interface Rules {
  readonly tools: readonly CommandName[];
  readonly cautions: readonly string[];
  readonly checks: readonly CheckSpec[];
  readonly worked: WorkedBy;
}

const RULES: Readonly<Record<DrillStepId, (v: Variant) => Rules>> = {
  'working-dart': workingDart,
  'slash-line': slashLine,
  move,
  pivot,
};

const stepsOf = (v: Variant): readonly DrillStepId[] =>
  v.drill.exercise === 'pivot' ? ['working-dart', 'pivot'] : ['working-dart', 'slash-line', 'move'];

/** What a drill practises: where the dart goes and how. */
export function drillSkill(v: Variant): string {
  const method = v.drill.exercise === 'pivot' ? 'pivot' : v.drill.exercise === 'angle' ? 'angle' : 'slash';
  const from = v.form === 'side' || v.darts[0] === 'right' ? 'side' : 'waist';
  const to = v.drill.exercise === 'split' ? 'two' : v.goals[0]!.place;
  return `${v.drill.exercise === 'join' ? 'both' : from}-to-${to}/${method}/plain`;
}

/** The drill as a lesson of its own: the same steps, checks and solvers as in the course. Pure. */
export function drillLesson(variant: Variant, words: DrillWords): Lesson {
  const { drill, figure, form } = variant;
  const skill = drillSkill(variant);
  const steps = stepsOf(variant).map((id): LessonStep => {
    const { title, text, hints } = words.step(variant, id);
    const shown = hints.map((ladder) => ({ ...ladder, rungs: ladder.rungs.slice(0, drill.hints) }));
    const ladders = shown.filter(({ rungs }) => rungs.length > 0);
    return {
      id,
      title,
      text,
      hints: ladders,
      skill: id === 'working-dart' ? 'working-dart' : skill,
      ...RULES[id](variant),
    };
  });
  return {
    id: drillId(variant),
    title: words.title(variant),
    summary: words.summary(variant),
    content: DRILL_CONTENT,
    figure,
    form,
    fabrics: [drill.fabric],
    needs: [],
    steps,
  };
}
