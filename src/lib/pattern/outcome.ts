/** Why an operation could not be done: a stable code, and numbers or ids that a sentence about it needs. */
export interface RefusedBecause {
  readonly code: string;
  readonly detail?: Readonly<Record<string, string | number>>;
}

export interface Refused {
  readonly refused: RefusedBecause;
}

/** What every operation on a piece returns: the result, or why there is none. Nothing is thrown on a learner's input. */
export type Outcome<T> = { readonly ok: T } | Refused;

export const done = <T>(ok: T): { readonly ok: T } => ({ ok });

export const refuse = (code: string, detail?: RefusedBecause['detail']): Refused => ({
  refused: detail === undefined ? { code } : { code, detail },
});

export const isRefused = <T>(outcome: Outcome<T>): outcome is Refused => 'refused' in outcome;
