import type { Scene } from '../../machines/scene.ts';
import { toolOf } from '../../machines/tools/known.ts';
import type { ToolSpec, ToolTarget } from '../../machines/tool-spec.ts';
import { apply } from '../../recipe/apply.ts';
import type { Command, CommandName } from '../../recipe/types.ts';
import type { Form } from '../forms/form.ts';
import { formsFor } from '../forms/index.ts';

/** The parts of the work in the order in which they follow one another. */
export const GROUPS = ['read', 'open', 'line', 'darts', 'cut', 'finish'] as const;
export type Group = (typeof GROUPS)[number];

/** The part of the work that a tool belongs to. */
const GROUP_OF: Readonly<Record<CommandName, Group>> = {
  identify: 'read',
  read: 'read',
  walk: 'read',
  'open-out': 'open',
  copy: 'open',
  place: 'open',
  'draw-line': 'line',
  'draw-curve': 'line',
  notch: 'line',
  'remove-notch': 'line',
  'notch-seam': 'line',
  connect: 'line',
  'extend-dart': 'darts',
  'draw-slash': 'darts',
  pivot: 'darts',
  'back-off': 'darts',
  'true-legs': 'darts',
  cap: 'darts',
  fullness: 'darts',
  slash: 'cut',
  'cut-slash': 'cut',
  turn: 'cut',
  separate: 'cut',
  'part-at-darts': 'cut',
  overlay: 'cut',
  'smooth-seam': 'finish',
  bridge: 'finish',
  ease: 'finish',
  'take-out': 'finish',
  true: 'finish',
  renotch: 'finish',
  allow: 'finish',
  corner: 'finish',
  'carry-notches': 'finish',
  label: 'finish',
  grain: 'finish',
};

/** Tools that cut the paper; on paper that takes a blade. */
export const CUTTING: readonly CommandName[] = [
  'slash',
  'cut-slash',
  'separate',
  'part-at-darts',
  'take-out',
  'cap',
];

export interface ToolGroup {
  readonly id: Group;
  /** Tools that have something on the table to work on. */
  readonly able: readonly CommandName[];
  /** Those that need something else to be done first. */
  readonly waiting: readonly CommandName[];
}

/** Whether the table as it lies takes the command. */
const takes = ({ work }: Scene, command: Command): boolean => 'work' in apply(work, command);

/** A press on a target does something: it gives a command that the table takes, or a setting. */
function pressDoes(spec: ToolSpec, scene: Scene, { id, point, how }: ToolTarget): boolean {
  const proposal = spec.propose(scene, { target: id, from: point, at: point, how });
  return proposal === undefined || 'options' in proposal || takes(scene, proposal.command);
}

/** What the form gives as it stands is taken, or asks for something to be typed. */
function formDoes(form: Form, scene: Scene): boolean {
  const given = form.build(Object.fromEntries(form.fields.map(({ id, value }) => [id, value])));
  return typeof given === 'string' || takes(scene, given);
}

/** Whether a tool can do anything on the table: at once, by something to press or pull, or by its form. */
function canDo(tool: CommandName, scene: Scene): boolean {
  const spec = toolOf(tool);
  if (!spec) return false;
  const acts = spec.acts?.(scene) ?? [];
  if (acts.some(({ command }) => takes(scene, command))) return true;
  const targets = spec.targets(scene);
  // What can be done at once with each thing is refused for all of them: so would be pulling them.
  if (acts.length === 0 && targets.some(({ how }) => how === 'carry')) return true;
  if (targets.some((target) => target.how === 'tap' && pressDoes(spec, scene, target))) return true;
  return formsFor([tool], scene.work, scene.fabric, 'mm').some((form) => formDoes(form, scene));
}

/** All tools by the part of the work, those that can do something now apart from those that wait. */
export function toolGroups({ work, fabric }: Pick<Scene, 'work' | 'fabric'>): readonly ToolGroup[] {
  const scene: Scene = { work, fabric, options: {}, reach: 6 };
  const names = Object.keys(GROUP_OF) as CommandName[];
  return GROUPS.map((id) => {
    const own = names.filter((name) => GROUP_OF[name] === id);
    const able = own.filter((name) => canDo(name, scene));
    return { id, able, waiting: own.filter((name) => !able.includes(name)) };
  });
}
