import type { Page } from '@playwright/test';

/** One line of the table in words: the piece and the kind it stands under, its name and what is said of it. */
export interface Told {
  /** Id of the piece; empty for what lies beside the pieces. */
  readonly piece: string;
  readonly kind: string;
  readonly label: string;
  readonly value: string;
}

/** Reads the open panel "The table in words". */
export const told = (page: Page): Promise<readonly Told[]> =>
  page.locator('details[data-twin] dl > div').evaluateAll((rows) =>
    rows.map((row) => ({
      piece: row.closest('[data-words]')?.getAttribute('data-words') ?? '',
      kind: row.closest('dl')?.previousElementSibling?.textContent ?? '',
      label: row.querySelector('dt')?.textContent ?? '',
      value: row.querySelector('dd')?.textContent ?? '',
    })),
  );

/** The millimetres a value begins with. */
export function mmIn(value: string): number {
  const found = /^(\d+(?:\.\d+)?) mm/.exec(value);
  if (!found && !value.startsWith('under 0.1 mm')) throw new Error(`No length in: ${value}`);
  return found ? Number(found[1]) : 0.05;
}
