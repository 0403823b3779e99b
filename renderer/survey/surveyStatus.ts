import { createStore } from 'zustand/vanilla';
import { kindWords } from '../../shared/words/coverWords.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import type { GroundSlope } from '../../shared/terrain/slope.ts';
import { compassPoint, slopeOrLevel, spotHeight, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { BaseLayerSetting } from '../store/baseLayerSettings.ts';
import { groundAt } from './planeShapes.ts';
import type { Ground } from './useGround.ts';

/** What the status bar tells of the place under the pointer. */
export interface SurveyStatus {
  readonly pointer: PlanePoint | null;
  readonly ground: Ground | null;
  readonly document: AtlasDocument | null;
  /** Base layers that are on. */
  readonly layers: readonly BaseLayerSetting[];
  /** Those of them that send nothing, by id. */
  readonly unreachable: readonly string[];
}

export const noStatus: SurveyStatus = {
  pointer: null,
  ground: null,
  document: null,
  layers: [],
  unreachable: [],
};

const slopeWords = ({ slopePct, downhillBearingDeg }: GroundSlope): string =>
  slopePct < 0.05
    ? slopeOrLevel(slopePct)
    : `${slopeOrLevel(slopePct)} falling ${compassPoint(downhillBearingDeg)}`;

export const surveyStatus = createStore<SurveyStatus>(() => noStatus);

/** "Base layer: blank canvas", and what lies under the pointer with its height. */
export function statusWords(
  { pointer, ground, document, layers, unreachable }: SurveyStatus,
  units: UnitsPreference,
): string {
  const silent = layers.find(({ id }) => unreachable.includes(id));
  const base =
    layers.length === 0
      ? 'Base layer: blank canvas'
      : silent !== undefined
        ? `${silent.name} cannot be reached; drawing goes on`
        : `Base layer: ${layers.map(({ name }) => name).join(', ')}`;
  if (pointer === null || document === null) return base;
  const cover = groundAt(document, pointer, ({ kind }) => kind !== 'tree')?.kind ?? 'lightRough';
  const height =
    ground === null
      ? ''
      : `, ${withUnit(spotHeight(ground.heightAt(pointer), units))}, ${slopeWords(ground.slopeAt(pointer))}`;
  return `${base}\u2003Under the pointer: ${kindWords[cover]}${height}`;
}
