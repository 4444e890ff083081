import { joinOf } from '../kinds/join.ts';
import type { DrillKit } from './kit.ts';
import { MOVING } from './moving.ts';

export const JOIN = { ...MOVING, of: joinOf } satisfies DrillKit;
