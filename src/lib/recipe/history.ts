import type { Command } from './types.ts';

/** One change of the list: at this place `removed` stood, and `added` stands now. */
interface Splice {
  readonly at: number;
  readonly removed: readonly Command[];
  readonly added: readonly Command[];
}
/** What one undo takes back. */
export type Edit = readonly Splice[];

/** The commands so far, the edits that made them (last one last), and those taken back (last one last). */
export interface History {
  readonly commands: readonly Command[];
  readonly done: readonly Edit[];
  readonly undone: readonly Edit[];
}

export const EMPTY: History = { commands: [], done: [], undone: [] };

/** The history of commands read from a file or from storage: each can be undone by itself, but for those that were given. */
export function historyOf(
  commands: readonly Command[],
  isGiven: (command: Command) => boolean = () => false,
): History {
  const done = commands.flatMap((c, at) => (isGiven(c) ? [] : [[{ at, removed: [], added: [c] }]]));
  return { commands, done, undone: [] };
}

function splice(
  commands: readonly Command[],
  at: number,
  remove: number,
  add: readonly Command[],
): Command[] {
  return [...commands.slice(0, at), ...add, ...commands.slice(at + remove)];
}

function run(commands: readonly Command[], edit: Edit): readonly Command[] {
  return edit.reduce((list, s) => splice(list, s.at, s.removed.length, s.added), commands);
}

function runBack(commands: readonly Command[], edit: Edit): readonly Command[] {
  return edit.reduceRight((list, s) => splice(list, s.at, s.added.length, s.removed), commands);
}

/** Makes an edit; what was undone before can no longer be redone. */
function edited(history: History, edit: Edit): History {
  return { commands: run(history.commands, edit), done: [...history.done, edit], undone: [] };
}

/** Adds a command at the end of the list. Which step it belongs to is in the command. */
export function add(history: History, command: Command): History {
  return edited(history, [{ at: history.commands.length, removed: [], added: [command] }]);
}

/** Puts `command` in the place of the one at `index`. An index that is not there changes nothing. */
export function replaceAt(history: History, index: number, command: Command): History {
  const was = history.commands[index];
  return was === undefined ? history : edited(history, [{ at: index, removed: [was], added: [command] }]);
}

/** Takes the command at `index` out. An index that is not there changes nothing. */
export function removeAt(history: History, index: number): History {
  const was = history.commands[index];
  return was === undefined ? history : edited(history, [{ at: index, removed: [was], added: [] }]);
}

/** Takes back the last edit, whatever step it was made in. With nothing done it gives the same history. */
export function undo(history: History): History {
  const edit = history.done[history.done.length - 1];
  if (edit === undefined) return history;
  return {
    commands: runBack(history.commands, edit),
    done: history.done.slice(0, -1),
    undone: [...history.undone, edit],
  };
}

/** Makes the edit again that was taken back last. */
export function redo(history: History): History {
  const edit = history.undone[history.undone.length - 1];
  if (edit === undefined) return history;
  return {
    commands: run(history.commands, edit),
    done: [...history.done, edit],
    undone: history.undone.slice(0, -1),
  };
}

/** Takes all commands of one step out, as one edit that can be undone. */
export function resetStep(history: History, stepId: string): History {
  const edit: Splice[] = [];
  history.commands.forEach((command, index) => {
    if (command.step === stepId) edit.push({ at: index - edit.length, removed: [command], added: [] });
  });
  return edit.length === 0 ? history : edited(history, edit);
}
