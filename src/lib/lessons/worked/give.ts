import { apply } from '../../recipe/apply.ts';
import { resolveAnchor } from '../../recipe/anchors.ts';
import type { Point } from '../../geometry/types.ts';
import type { Command, Fabric, Work } from '../../recipe/types.ts';
import type { LessonStep } from '../types.ts';

/** A command without its step, which is the same for all of a worked step. */
export type Given = Command extends infer C ? (C extends Command ? Omit<C, 'step'> : never) : never;

/** The hand that works a step: it sees the table as it is now and gives commands one after the other. */
export interface Hand {
  readonly work: Work;
  readonly fabric: Fabric;
  readonly rule: LessonStep;
  /** Gives a command; one that cannot be followed on this table is left out. */
  readonly give: (command: Given) => void;
}

/** A worked step: pure, from the table as it lies. */
export type Worked = (hand: Hand) => void;

/** Runs a worked step and returns its commands. */
export function commandsOf(
  worked: Worked,
  rule: LessonStep,
  before: Work,
  fabric: Fabric,
): readonly Command[] {
  const commands: Command[] = [];
  let work = before;
  worked({
    get work() {
      return work;
    },
    fabric,
    rule,
    give(given) {
      const command = { ...given, step: rule.id } as Command;
      const next = apply(work, command);
      if ('refused' in next) return;
      work = next.work;
      commands.push(command);
    },
  });
  return commands;
}

/** A text among the parameters of a worked step. Throws RangeError when it is not there: a fault of the lesson. */
export function textOf(rule: LessonStep, param: string): string {
  const value = rule.worked?.[param];
  if (typeof value === 'string') return value;
  throw new RangeError(`the worked solution of '${rule.id}' needs the text '${param}'`);
}

/** A number among the parameters of a worked step; `otherwise` when it is left out. Throws RangeError for any other value. */
export function numberOf(rule: LessonStep, param: string, otherwise?: number): number {
  const value = rule.worked?.[param] ?? otherwise;
  if (typeof value === 'number') return value;
  throw new RangeError(`the worked solution of '${rule.id}' needs the number '${param}'`);
}

/** Where a landmark is, mm; undefined when it is not on the table. */
export const landmarkAt = (work: Work, id: string): Point | undefined =>
  resolveAnchor(work, { landmark: id });

export const SIDES = ['right', 'left'] as const;
