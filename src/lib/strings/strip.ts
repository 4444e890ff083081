import { nameOf } from './names.ts';
import { later } from './table.ts';

export const choiceWords = (option: string, value: string, on?: string): string =>
  (option === 'what' ? later.thing?.(value) : later.choice?.(option, value, on)) ?? nameOf(value);

/** What a setting of a tool is called, by its id. */
export const optionWords = (id: string): string => (id === 'what' ? 'This is' : (later.option?.(id) ?? id));

/** Words on a tool's button; `id` is `kind:...`. */
export const actWords = (id: string, about = ''): string => later.act?.(id, about) ?? id;

/** The choice of the pieces that lie on the table, by the cloth that they are for. */
export const PIECES_FOR = { title: 'Pieces for', knit: 'a knit', woven: 'a stable woven' } as const;
