import type { CommandName } from '../../recipe/types.ts';
import type { ToolSpec } from '../tool-spec.ts';
import { BLOCK } from './block.ts';
import { CAPS } from './caps.ts';
import { CUT } from './cut.ts';
import { DART } from './dart.ts';
import { FINISH } from './finish.ts';
import { FULLNESS } from './fullness.ts';
import { LEGS } from './legs.ts';
import { LINE } from './line.ts';
import { MARKS } from './marks.ts';
import { OPEN } from './open.ts';
import { PROOF } from './proof.ts';
import { SEWN } from './sewn.ts';
import { STROKE } from './stroke.ts';
import { TREAT } from './treat.ts';

/** Every tool, by the command it gives, all of them fetched; the compiler sees to it that none is missing. */
export const TOOLS: Readonly<Record<CommandName, ToolSpec>> = {
  ...BLOCK,
  ...OPEN,
  ...LEGS,
  ...LINE,
  ...MARKS,
  ...STROKE,
  ...CUT,
  ...DART,
  ...SEWN,
  ...CAPS,
  ...FULLNESS,
  ...PROOF,
  ...TREAT,
  ...FINISH,
};
