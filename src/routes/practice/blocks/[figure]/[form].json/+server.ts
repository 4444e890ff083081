import { error, json, type RequestHandler } from '@sveltejs/kit';
import { FIGURES } from '../../../../../lib/pattern/figures.ts';
import type { BlockForm } from '../../../../../lib/pattern/block.ts';
import { startWork } from '../../../../../lib/recipe/start.ts';
import type { EntryGenerator } from './$types';

// A drafted block a file: a drill fetches the one it begins on, and not what drafts it.
export const prerender = true;

const FORMS: Readonly<Record<BlockForm, BlockForm>> = {
  waist: 'waist',
  side: 'side',
  'two-dart': 'two-dart',
};

export const entries: EntryGenerator = () =>
  Object.keys(FIGURES).flatMap((figure) => Object.keys(FORMS).map((form) => ({ figure, form })));

export const GET: RequestHandler = ({ params: { figure, form } }) => {
  const known = Object.values(FORMS).find((one) => one === form);
  if (figure === undefined || !Object.hasOwn(FIGURES, figure) || !known)
    error(404, 'There is no such block.');
  return json(startWork({ figure, form: known }).block);
};
