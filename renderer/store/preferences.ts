import { createStore } from 'zustand/vanilla';
import { type BaseLayerSetting, baseLayersFrom, openStreetMap } from './baseLayerSettings.ts';
import type { TextSize, ThemeChoice } from '../ui/theme.ts';

/** What a person sets once for every atlas. */
export interface Preferences {
  readonly theme: ThemeChoice;
  readonly textSize: TextSize;
  readonly units: 'yards' | 'metres';
  /** A grid over the ground of the survey. */
  readonly grid: boolean;
  readonly baseLayers: readonly BaseLayerSetting[];
}

const first: Preferences = {
  theme: 'auto',
  textSize: 'usual',
  units: 'yards',
  grid: false,
  baseLayers: [openStreetMap],
};

export const preferencesStore = createStore<Preferences>(() => first);

/** Preferences as kept by any earlier version: what does not fit falls back to the first-start value. */
export function preferencesFrom(kept: unknown): Preferences {
  const value: Partial<Record<keyof Preferences, unknown>> =
    typeof kept === 'object' && kept !== null ? kept : {};
  return {
    theme: value.theme === 'light' || value.theme === 'dark' ? value.theme : first.theme,
    textSize: value.textSize === 'large' ? 'large' : first.textSize,
    units: value.units === 'metres' ? 'metres' : first.units,
    grid: value.grid === true,
    baseLayers: baseLayersFrom(value.baseLayers),
  };
}
