import type { RulerUnits } from '../strings/units.ts';

export type Theme = 'system' | 'light' | 'dark';

export interface Settings {
  readonly units: RulerUnits;
  readonly theme: Theme;
}

export const DEFAULT_SETTINGS: Settings = { units: 'mm', theme: 'system' };

const KEY = 'pin-and-pivot:settings';
const UNITS: readonly unknown[] = ['mm', 'inch'] satisfies RulerUnits[];
const THEMES: readonly unknown[] = ['system', 'light', 'dark'] satisfies Theme[];

function isSettings(data: unknown): data is Settings {
  if (typeof data !== 'object' || data === null || !('units' in data) || !('theme' in data)) return false;
  return UNITS.includes(data.units) && THEMES.includes(data.theme);
}

/** The kept settings; the defaults when there are none, or they cannot be read. */
export function loadSettings(): Settings {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? 'null');
    return isSettings(kept) ? { units: kept.units, theme: kept.theme } : DEFAULT_SETTINGS;
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
