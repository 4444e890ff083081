import * as v from 'valibot';
import type { Units } from '../strings/units.ts';

export type Theme = 'system' | 'light' | 'dark';

export interface Settings {
  readonly units: Units;
  readonly theme: Theme;
}

export const DEFAULT_SETTINGS: Settings = { units: 'mm', theme: 'system' };

const KEY = 'pin-and-pivot:settings';
const schema = v.object({
  units: v.picklist(['mm', 'inch']),
  theme: v.picklist(['system', 'light', 'dark']),
});

/** The kept settings; the defaults when there are none, or they cannot be read. */
export function loadSettings(): Settings {
  try {
    const result = v.safeParse(schema, JSON.parse(localStorage.getItem(KEY) ?? 'null'));
    return result.success ? result.output : DEFAULT_SETTINGS;
  } catch {
    return DEFAULT_SETTINGS;
  }
}

/** Keeps the settings where the browser allows it. */
export function saveSettings(settings: Settings): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(settings));
  } catch {
    // Settings are a comfort: without storage they last as long as the page.
  }
}
