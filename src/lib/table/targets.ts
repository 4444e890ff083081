import type { Point } from '../geometry/types.ts';
import { distance } from '../geometry/point.ts';
import { chainLength } from '../geometry/chain.ts';
import { nearestOnChain } from '../geometry/nearest.ts';
import { bustPoints, lineOf, type Options, type Scene } from '../machines/scene.ts';
import type { ToolTarget } from '../machines/tool-spec.ts';
import { late } from './late.ts';
import { targetsOf } from '../machines/holding.ts';
import { toolOf } from '../machines/tools/known.ts';
import type { CommandName, Fabric, Work } from '../recipe/types.ts';
import { placeWords, targetWords } from '../strings/table.ts';
import { formatLength, type Units } from '../strings/units.ts';

export type TargetAction = 'choose' | 'pick up' | 'take away';

/** A handle of the table in words: the one source for what is drawn, focused and listed in the text twin. */
export interface LabelledTarget extends ToolTarget {
  readonly label: string;
  readonly measures: readonly { readonly label: string; readonly value: string }[];
  readonly actions: readonly TargetAction[];
}

export interface TargetView {
  readonly fabric: Fabric;
  readonly units: Units;
  readonly options?: Options;
  /** Names are what the step asks for: tell where things lie instead. */
  readonly anonymous?: boolean;
}

/** Where a point of the front lies, in words. */
export function whereIs(point: Point, units: Units): string {
  const side = Math.abs(point.x) < 0.5 ? 'centre' : point.x < 0 ? 'right' : 'left';
  const level = Math.abs(point.y) < 0.5;
  return placeWords(
    formatLength(Math.abs(point.x), units),
    side,
    formatLength(Math.abs(point.y), units),
    point.y < 0,
    level,
  );
}

function measuresOf(scene: Scene, target: ToolTarget, units: Units): { label: string; value: string }[] {
  const line = lineOf(scene.work);
  const out = [{ label: 'lies', value: whereIs(target.point, units) }];
  if (!line || !['point', 'add', 'notch', 'tip'].includes(target.kind)) return out;
  if (target.at !== undefined && target.kind !== 'tip')
    out.push({
      label: 'along the line',
      value: `${formatLength(target.at, units)} of ${formatLength(chainLength(line.chain), units)}`,
    });
  for (const { dart, point } of bustPoints(scene)) {
    const away =
      target.kind === 'tip' ? nearestOnChain(line.chain, point).distance : distance(point, target.point);
    const label =
      target.kind === 'tip' ? `line from the ${dart.side} bust point` : `from the ${dart.side} bust point`;
    if (target.kind !== 'tip' || dart.id === target.dart)
      out.push({ label, value: formatLength(away, units) });
  }
  return out;
}

const same = new WeakMap<Work, Map<string, readonly LabelledTarget[]>>();

/** The targets of a tool with their words. */
export function targets(
  work: Work,
  tool: CommandName | undefined,
  view: TargetView,
): readonly LabelledTarget[] {
  const spec = tool && toolOf(tool);
  if (!spec) return [];
  const key = JSON.stringify([tool, view]);
  const kept = same.get(work) ?? new Map<string, readonly LabelledTarget[]>();
  same.set(work, kept);
  let list = kept.get(key);
  if (!list) {
    const scene: Scene = { work, fabric: view.fabric, options: view.options ?? {}, reach: 6 };
    list = targetsOf(spec, scene).map((target): LabelledTarget => {
      const hidden = view.anonymous && (target.kind === 'landmark' || target.kind === 'edge');
      return {
        ...target,
        label: hidden
          ? (late.nameless?.(scene, target, view.units) ?? '')
          : targetWords(target.id, target.kind, target.ref ?? '', target.dart ?? ''),
        measures: hidden ? [] : measuresOf(scene, target, view.units),
        actions: [
          target.how === 'tap' ? 'choose' : 'pick up',
          ...(target.removable ? (['take away'] as const) : []),
        ],
      };
    });
    kept.set(key, list);
  }
  return list;
}

const words = new WeakMap<LabelledTarget, string>();

/** What a screen reader hears on a handle: its name, then its measures. */
export function spoken(target: LabelledTarget): string {
  let text = words.get(target);
  if (text === undefined) {
    const { label, measures, done } = target;
    const all = [label, ...measures.map((one) => `${one.label} ${one.value}`), ...(done ? ['done'] : [])];
    words.set(target, (text = all.join(', ')));
  }
  return text;
}
