import { generator } from '../../../shared/random/generator.ts';
import type { TerrainInput } from '../../../shared/terrain/terrainInput.ts';
import type { SurveyedComplex } from './calibration.ts';
import { area, circle, emptyInput } from './fixtures.ts';

const SIZE_M = 44;
const MIDDLE_M = 22;
const BUMPS = 6;

/**
 * A green unlike those of the sample course: tilted, with five waves of 9 to 25 m across it, on some a tier nobody has traced,
 * banks about it; read on a jittered lattice of 2.2 to 3.8 m, more thinly round it.
 *
 * @param bumpsM how rough the ground round it is: bumps 5 to 11 m long, one standard deviation
 */
export function otherGreen(seed: number, bumpsM = 0): Omit<SurveyedComplex, 'complex'> {
  const random = generator(7000 + seed);
  const turn = (): number => 2 * Math.PI * random.uniform();
  const tilt = 0.01 + 0.02 * random.uniform();
  const fall = turn();
  const waves = Array.from({ length: 5 }, () => {
    const lengthM = 9 + 16 * random.uniform();
    const bearing = turn();
    const amplitudeM = 0.0025 * lengthM * (0.3 + random.uniform());
    return { lengthM, bearing, amplitudeM, phase: turn() };
  });
  const tier =
    random.uniform() < 0.3
      ? {
          bearing: turn(),
          riseM: 0.25 + 0.3 * random.uniform(),
          rampM: 3 + 2 * random.uniform(),
          asideM: 3 * random.normal(),
        }
      : null;
  const banks = Array.from({ length: 3 }, () => ({
    bearing: turn(),
    spread: 0.5 + 0.5 * random.uniform(),
    dropM: 1.2 * random.normal(),
  }));
  const radiusM = 11 + 2 * random.uniform();
  const bumps = bumpsRound(seed, bumpsM);

  const heightAt = (eastM: number, northM: number): number => {
    const x = eastM - MIDDLE_M;
    const y = northM - MIDDLE_M;
    const along = (bearing: number): number => x * Math.cos(bearing) + y * Math.sin(bearing);
    let height = tilt * along(fall);
    for (const { lengthM, bearing, amplitudeM, phase } of waves)
      height += amplitudeM * Math.cos((2 * Math.PI * along(bearing)) / lengthM + phase);
    if (tier !== null) height += tier.riseM * smooth((along(tier.bearing) - tier.asideM) / tier.rampM + 0.5);
    const beyondM = Math.hypot(x, y) - radiusM;
    height += bumps(x, y) * smooth((beyondM - 0.8) / 2);
    for (const { bearing, spread, dropM } of banks) {
      const off = Math.atan2(y, x) - bearing;
      const here = Math.exp(-((Math.atan2(Math.sin(off), Math.cos(off)) / spread) ** 2));
      height -= dropM * here * smooth((beyondM - 1.5) / 6.5);
    }
    return height;
  };

  const spacingM = 2.2 + 1.6 * random.uniform();
  const heights: TerrainInput['heights'][number][] = [];
  for (let north = 2; north < SIZE_M - 1; north += spacingM) {
    for (let east = 2; east < SIZE_M - 1; east += spacingM) {
      const eastM = east + 0.8 * spacingM * (random.uniform() - 0.5);
      const northM = north + 0.8 * spacingM * (random.uniform() - 0.5);
      const beyondM = Math.hypot(eastM - MIDDLE_M, northM - MIDDLE_M) - radiusM;
      if (beyondM > 9 || (beyondM > 1 && random.uniform() > 0.35)) continue;
      heights.push({
        id: `h${String(heights.length)}`,
        at: { eastM, northM },
        heightM: Math.round(100 * (heightAt(eastM, northM) + 0.01 * random.normal())) / 100,
        accuracyM: 0.01,
      });
    }
  }
  const ring = circle(MIDDLE_M, MIDDLE_M, radiusM);
  return {
    input: { ...emptyInput(SIZE_M), heights, areas: [area('green', ring)] },
    green: [ring],
    trueHeight: (at) => heightAt(at.eastM, at.northM),
  };
}

function bumpsRound(seed: number, sdM: number): (x: number, y: number) => number {
  const random = generator(9000 + seed);
  const waves = Array.from({ length: BUMPS }, () => ({
    lengthM: 5 + 6 * random.uniform(),
    bearing: 2 * Math.PI * random.uniform(),
    phase: 2 * Math.PI * random.uniform(),
  }));
  const amplitudeM = sdM * Math.sqrt(2 / BUMPS);
  return (x, y) =>
    waves.reduce((sum, { lengthM, bearing, phase }) => {
      const along = x * Math.cos(bearing) + y * Math.sin(bearing);
      return sum + amplitudeM * Math.cos((2 * Math.PI * along) / lengthM + phase);
    }, 0);
}

function smooth(share: number): number {
  const t = Math.min(1, Math.max(0, share));
  return t * t * t * (t * (6 * t - 15) + 10);
}
