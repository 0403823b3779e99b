import { createStore } from 'zustand/vanilla';
import { inBox } from '../../shared/atlas/checks/survey.ts';
import { kindWords } from '../../shared/words/coverWords.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { pointInPolygon } from '../../shared/geometry/ring.ts';
import { paintOrder } from '../../shared/plate/ground.ts';
import { spotHeight, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { BaseLayerSetting } from '../store/baseLayerSettings.ts';
import { areaShapes } from './planeShapes.ts';
import type { Ground } from './useGround.ts';

/** What the status bar tells of the place under the pointer. */
export interface SurveyStatus {
  readonly pointer: PlanePoint | null;
  readonly ground: Ground | null;
  readonly document: AtlasDocument | null;
  /** Base layers that are on. */
  readonly layers: readonly BaseLayerSetting[];
  /** None of them answers. */
  readonly unreachable: boolean;
}

export const noStatus: SurveyStatus = {
  pointer: null,
  ground: null,
  document: null,
  layers: [],
  unreachable: false,
};

export const surveyStatus = createStore<SurveyStatus>(() => noStatus);

/** "Base layer: blank canvas", and what lies under the pointer with its height. */
export function statusWords(
  { pointer, ground, document, layers, unreachable }: SurveyStatus,
  units: UnitsPreference,
  grid: boolean,
): string {
  const base =
    layers.length === 0
      ? 'Base layer: blank canvas'
      : unreachable
        ? `${layers[0]?.name ?? ''} cannot be reached; drawing goes on`
        : `Base layer: ${layers.map(({ name }) => name).join(', ')}`;
  const sheet = `${base}, grid ${grid ? 'on' : 'off'}`;
  if (pointer === null || document === null) return sheet;
  const cover = areaShapes(document)
    .filter(
      ({ record, box, polygon }) =>
        record.kind !== 'tree' && inBox(pointer, box) && pointInPolygon(pointer, polygon),
    )
    .reduce((top, { record }) => Math.max(top, paintOrder.indexOf(record.kind)), 0);
  const height = ground === null ? '' : `, ${withUnit(spotHeight(ground.heightAt(pointer), units))}`;
  return `${sheet}\u2003Under the pointer: ${kindWords[paintOrder[cover] ?? 'lightRough']}${height}`;
}
