import { later } from './table.ts';

/** What a setting of a tool is called, by its id. */
export const optionWords = (id: string): string => (id === 'what' ? 'This is' : (later.option?.(id) ?? id));

/** Words on a tool's button; `id` is `kind:...`. */
export const actWords = (id: string, about = ''): string => later.act?.(id, about) ?? id;
