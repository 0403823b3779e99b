import { useEffect, useMemo, useState } from 'react';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { fingerprint } from '../../shared/planner/fingerprint.ts';
import type { ReliefDrawing } from '../../shared/plate/relief.ts';
import { hermiteGrid } from '../../shared/terrain/hermiteGrid.ts';
import { type GroundSlope, slopeAt } from '../../shared/terrain/slope.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { TroubleWords } from '../ui/Trouble.tsx';
import { GroundClient } from '../workers/groundClient.ts';
import type { GroundLook, GroundRead } from '../workers/readGround.ts';
import { sameTerrain, type SurveyTerrain, terrainOf } from './terrainOf.ts';

/** The fitted ground about the hole's green, ready to ask and to draw. */
export interface Ground {
  readonly read: GroundRead;
  readonly relief: ReliefDrawing;
  readonly heightAt: (at: PlanePoint) => number;
  readonly slopeAt: (at: PlanePoint) => GroundSlope;
}

export interface GroundState {
  readonly ground: Ground | null;
  readonly trouble: TroubleWords | null;
}

const none: GroundState = { ground: null, trouble: null };
const client = new GroundClient();

/** Reads the ground in a worker whenever what it stands on changes; the old one stays until the new one is there. */
export function useGround(
  document: AtlasDocument,
  holeId: string | null,
  units: UnitsPreference,
  heavyOnly: boolean,
  look: GroundLook,
): GroundState {
  const terrain = useMemo(() => terrainOf(document, holeId), [document, holeId]);
  // Equal keys are equal ground: the first of them is kept, so that nothing is asked twice.
  const [kept, setKept] = useState<{ readonly key: string; readonly terrain: SurveyTerrain | null }>({
    key: '',
    terrain: null,
  });
  const key = useMemo(
    () =>
      terrain === null
        ? ''
        : kept.terrain !== null && sameTerrain(kept.terrain, terrain)
          ? kept.key
          : fingerprint(terrain),
    [terrain, kept],
  );
  if (kept.key !== key) setKept({ key, terrain });
  const asked = kept.terrain;
  const [state, setState] = useState<GroundState>(none);
  useEffect(() => {
    if (asked === null) {
      client.cancel();
      return;
    }
    client.ask({ ...asked, groundKey: kept.key, units, heavyOnly, look }, ({ ground, problem }) => {
      setState(
        ground === null ? { ground: null, trouble: problem } : { ground: madeReady(ground), trouble: null },
      );
    });
  }, [asked, kept.key, units, heavyOnly, look]);
  return asked === null ? none : state;
}

function madeReady(read: GroundRead): Ground {
  const surface = hermiteGrid(read.shape, read.heightsM, read.riseEast, read.riseNorth);
  const out = new Float64Array(3);
  return {
    read,
    relief: { ...read.relief, downhillAt: (at) => slopeAt(surface, at).downhillBearingDeg },
    heightAt: ({ eastM, northM }) => {
      surface.sampleHeight(eastM, northM, out);
      return out[0] ?? NaN;
    },
    slopeAt: (at) => slopeAt(surface, at),
  };
}
