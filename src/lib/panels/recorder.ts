import type { Mark } from '../grading/types.ts';
import { drillOfId, levelOf } from '../practice/drill-skills.ts';
import { errorOf, openCodes } from '../practice/rating.ts';
import { skillOf, type Practised } from '../practice/skills.ts';
import { deviceId } from '../progress/device.ts';
import type { Exercise, ProgressEvent } from '../progress/events.ts';
import { ownLog } from '../progress/own-log.ts';
import type { Command } from '../recipe/types.ts';

/** A step of a lesson or drill that is being worked on. */
export interface AtWork {
  readonly exercise: Exercise;
  readonly step: Practised & { readonly id: string };
  /** What was done in the step so far. */
  readonly commands: readonly Command[];
}

export interface Marked extends AtWork {
  readonly mark: Mark;
  /** Rungs of the hint ladder that are open. */
  readonly hints: number;
  /** The worked solution of the step was seen. */
  readonly worked: boolean;
  /** Time at work on the step since its last mark, s. */
  readonly seconds: number;
  /** All that was done in the step came from a file. */
  readonly old: boolean;
}

const base = ({ exercise, step, commands }: AtWork) => ({
  id: crypto.randomUUID(),
  at: Date.now(),
  device: deviceId(),
  exercise: { kind: exercise.kind, id: exercise.id, content: exercise.content },
  step: step.id,
  skill: skillOf(exercise.id, step, commands),
});

/** Whether the step was right when it was marked last. */
async function wasRight({ exercise, step }: AtWork): Promise<boolean> {
  const { log } = await ownLog().load();
  const last = log.findLast(
    (one) => one.kind === 'mark' && one.exercise.id === exercise.id && one.step === step.id,
  );
  return last?.kind === 'mark' && last.verdict === 'accepted';
}

/**
 * Records a mark, but for old work that comes from a file and was right before: that is no practice. Never rejects: what cannot be kept lasts
 * as long as the page.
 */
export async function recordMark(marked: Marked): Promise<void> {
  const { mark, hints, worked, seconds } = marked;
  if (marked.old && (await wasRight(marked))) return;
  const drill = drillOfId(marked.exercise.id);
  const event: ProgressEvent = {
    kind: 'mark',
    ...base(marked),
    verdict: mark.verdict,
    codes: openCodes(mark.findings),
    error: errorOf(mark.findings),
    hints,
    worked,
    seconds: Math.round(10 * seconds) / 10,
    level: drill ? levelOf(drill) : null,
  };
  await ownLog().add([event]);
}

/** Records that so many hints of a step are open, or where no number is given that its worked solution was. Never rejects. */
export async function recordHelp(atWork: AtWork, hints?: number): Promise<void> {
  const taken = base(atWork);
  await ownLog().add([
    hints === undefined ? { kind: 'worked', ...taken } : { kind: 'hint', ...taken, hints },
  ]);
}

/** Records that the mistake `code` of an earlier mark was made good by a second chance. Never rejects. */
export async function recordCredit(of: ProgressEvent, code: string): Promise<void> {
  const { exercise, step, skill } = of;
  const fresh = { id: crypto.randomUUID(), at: Date.now(), device: deviceId() };
  await ownLog().add([{ kind: 'credit', ...fresh, exercise, step, skill, of: of.id, code }]);
}
