import { useEffect, useMemo, useRef, useState } from 'react';
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

/** How long after the last change the ground is asked for, ms: the frame that shows the change comes first. */
const AFTER_MS = 20;

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
  const [kept, setKept] = useState<SurveyTerrain | null>(null);
  const same = kept !== null && terrain !== null && sameTerrain(kept, terrain);
  if (kept !== terrain && !same) setKept(terrain);
  const [state, setState] = useState<GroundState>(none);
  const asked = useRef('');
  useEffect(() => {
    if (kept === null) {
      client.cancel();
      asked.current = '';
      return undefined;
    }
    // To tell ground from ground takes longer than to draw the edit, so the edit is shown first.
    const timer = setTimeout(() => {
      const groundKey = fingerprint(kept);
      const question = JSON.stringify([groundKey, units, heavyOnly, look]);
      if (asked.current === question) return;
      asked.current = question;
      client.ask({ ...kept, groundKey, units, heavyOnly, look }, ({ ground, problem }) => {
        setState(
          ground === null ? { ground: null, trouble: problem } : { ground: madeReady(ground), trouble: null },
        );
      });
    }, AFTER_MS);
    return () => clearTimeout(timer);
  }, [kept, units, heavyOnly, look]);
  return kept === null ? none : state;
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
