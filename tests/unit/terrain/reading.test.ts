import { describe, expect, it } from 'vitest';
import { insideDistanceM, polygonAreaM2, signedAreaM2 } from '../../../shared/geometry/ring.ts';
import { contourLines } from '../../../shared/terrain/contourLines.ts';
import { fallArrows, LEVEL_BELOW_PCT } from '../../../shared/terrain/fallArrows.ts';
import { fitSurface } from '../../../shared/terrain/fitSurface.ts';
import { fairSlopeLimitPct, flagGround, LEAST_FROM_EDGE_M } from '../../../shared/terrain/flagGround.ts';
import { proposeFlags } from '../../../shared/terrain/proposeFlags.ts';
import { sectionAlong } from '../../../shared/terrain/section.ts';
import { slopeAt } from '../../../shared/terrain/slope.ts';
import { slopeClasses } from '../../../shared/terrain/slopeClasses.ts';
import { surveyedGround } from '../../../shared/terrain/surveyedGround.ts';
import { waterLines } from '../../../shared/terrain/waterLines.ts';
import { area, circle, emptyInput, heightReadings, swells } from './fixtures.ts';

const green = area('green', circle(20, 20, 13));
const input = { ...emptyInput(), areas: [green], heights: heightReadings(swells, 80) };
const surface = fitSurface(input);
const ground = surveyedGround(surface, input);
const out = new Float64Array(3);
const heightAt = (eastM: number, northM: number): number => {
  surface.sampleHeight(eastM, northM, out);
  return out[0] ?? NaN;
};

/** A cone, 4 % all round, with its top at the middle of the green. */
const cone = (x: number, y: number): number => 2 - 0.04 * Math.hypot(x - 20, y - 20);
/** A plane that falls 2 % to the south-east. */
const plane = (x: number, y: number): number => 1 - (0.02 * (x - y)) / Math.SQRT2;

describe('slope', () => {
  it('has the bearing in which a ball would set off', () => {
    const tilted = fitSurface({ ...emptyInput(), heights: heightReadings(plane, 12) });
    const slope = slopeAt(tilted, { eastM: 7, northM: 30 });
    expect(slope.slopePct).toBeCloseTo(2, 9);
    expect(slope.downhillBearingDeg).toBeCloseTo(135, 6);
  });

  it('classes contain one another and are cut to the green', () => {
    const classes = slopeClasses(surface, green.polygon);
    const areas = classes.map((c) => c.rings.reduce((sum, ring) => sum + Math.abs(signedAreaM2(ring)), 0));
    const net = classes.map((c) => Math.abs(c.rings.reduce((sum, ring) => sum + signedAreaM2(ring), 0)));
    expect(areas.every(Number.isFinite)).toBe(true);
    // Share of the green at least so steep, against a count of points.
    const points: number[] = [];
    for (let x = 7; x <= 33; x += 0.2) {
      for (let y = 7; y <= 33; y += 0.2) {
        if (insideDistanceM({ eastM: x, northM: y }, green.polygon) > 0) {
          points.push(slopeAt(surface, { eastM: x, northM: y }).slopePct);
        }
      }
    }
    classes.forEach((c, i) => {
      const share = points.filter((pct) => pct >= c.fromPct).length / points.length;
      expect((net[i] ?? NaN) / polygonAreaM2(green.polygon)).toBeCloseTo(share, 1.7);
      for (const ring of c.rings) {
        for (const at of ring) expect(insideDistanceM(at, green.polygon)).toBeGreaterThan(-0.02);
      }
    });
  });
});

describe('contours', () => {
  const lines = contourLines(surface, 0.1, green.polygon);

  it('lie at their height, inside the clip, with higher ground on the left', () => {
    expect(lines.length).toBeGreaterThan(4);
    for (const { heightM, points } of lines) {
      expect(heightM / 0.1).toBeCloseTo(Math.round(heightM / 0.1), 9);
      points.forEach((at, i) => {
        expect(Math.abs(heightAt(at.eastM, at.northM) - heightM)).toBeLessThan(0.002);
        expect(insideDistanceM(at, green.polygon)).toBeGreaterThan(-1e-4);
        const next = points[i + 1];
        if (next === undefined) return;
        heightAt((at.eastM + next.eastM) / 2, (at.northM + next.northM) / 2);
        const left = (out[2] ?? NaN) * (next.eastM - at.eastM) - (out[1] ?? NaN) * (next.northM - at.northM);
        expect(left).toBeGreaterThanOrEqual(-1e-6);
      });
    }
  });

  it('close round a hill and have the length they must', () => {
    const hill = fitSurface({ ...emptyInput(), heights: heightReadings(cone, 400) });
    const ring = contourLines(hill, 0.2).filter((line) => Math.abs(line.heightM - 1.6) < 1e-9);
    expect(ring).toHaveLength(1);
    expect(ring[0]?.closed).toBe(true);
    expect(Math.abs(signedAreaM2(ring[0]?.points ?? []))).toBeCloseTo(Math.PI * 100, -1);
  });
});

describe('lines and arrows', () => {
  it('draws arrows down the slope and none on level ground', () => {
    const arrows = fallArrows(surface, green.polygon, 2);
    expect(arrows.length).toBeGreaterThan(60);
    for (const arrow of arrows) {
      expect(arrow.slopePct).toBeGreaterThanOrEqual(LEVEL_BELOW_PCT);
      const angle = (arrow.downhillBearingDeg * Math.PI) / 180;
      const { eastM, northM } = arrow.at;
      expect(heightAt(eastM + 0.1 * Math.sin(angle), northM + 0.1 * Math.cos(angle))).toBeLessThan(
        heightAt(eastM, northM),
      );
    }
    const level = fitSurface({ ...emptyInput(), heights: heightReadings((x) => 0.004 * x, 9) });
    expect(fallArrows(level, green.polygon, 2)).toEqual([]);
  });

  it('lets water run down all the way, and off a cone on every side', () => {
    for (const line of waterLines(surface, green.polygon, 2)) {
      line.forEach((at, i) => {
        const next = line[i + 1];
        if (next !== undefined) {
          expect(heightAt(next.eastM, next.northM)).toBeLessThan(heightAt(at.eastM, at.northM));
        }
      });
    }
    const hill = fitSurface({ ...emptyInput(), heights: heightReadings(cone, 200) });
    const ends = waterLines(hill, green.polygon, 2).flatMap((line) => line.slice(-1));
    const quadrants = new Set(ends.map((p) => `${p.eastM > 20}${p.northM > 20}`));
    expect(quadrants.size).toBe(4);
  });

  it('cuts a section with heights and covers', () => {
    const section = sectionAlong(
      ground,
      [
        { eastM: 0, northM: 20 },
        { eastM: 20, northM: 20 },
        { eastM: 20, northM: 40 },
      ],
      0.5,
    );
    expect(section.distancesM).toHaveLength(81);
    expect(section.distancesM[80]).toBeCloseTo(40, 9);
    expect(section.heightsM[40]).toBeCloseTo(heightAt(20, 20), 9);
    expect(new Set(section.coverCodes)).toEqual(new Set([0, 4]));
  });
});

describe('where a flag can stand', () => {
  it('takes the slope limit from the day’s green speed', () => {
    expect(fairSlopeLimitPct(10)).toBe(3.9);
    expect(fairSlopeLimitPct(11.5)).toBeCloseTo(3.41, 9);
    expect(fairSlopeLimitPct(20)).toBe(2.9);
    expect(fairSlopeLimitPct(7)).toBeCloseTo(4.788, 9);
  });

  it('says what is wrong with a place', () => {
    const over = (height: typeof plane): ReturnType<typeof surveyedGround> => {
      const tilted = { ...input, heights: heightReadings(height, 30) };
      return surveyedGround(fitSurface(tilted), tilted);
    };
    const easy = over(plane);
    expect(flagGround(easy, { eastM: 20, northM: 20 }, 10).faults).toEqual([]);
    expect(flagGround(easy, { eastM: 30.5, northM: 20 }, 10).faults).toEqual(['nearEdge']);
    expect(flagGround(easy, { eastM: 36, northM: 20 }, 10).faults).toEqual(['offGreen']);
    const steep = over((x, y) => 2 * plane(x, y));
    expect(flagGround(steep, { eastM: 20, northM: 20 }, 10).faults).toEqual(['tooSteep']);
    expect(flagGround(steep, { eastM: 20, northM: 20 }, 8.5).faults).toEqual([]);
    const peaked = over((x, y) => 2 - 0.03 * Math.hypot(x - 20, y - 20));
    expect(flagGround(peaked, { eastM: 12, northM: 20 }, 10).faults).toEqual([]);
  });

  it('proposes front, middle and back along the line of play', () => {
    const flags = proposeFlags(ground, 90, 9);
    expect(flags.map((f) => f.part)).toEqual(['front', 'middle', 'back']);
    const easts = flags.map((f) => f.at.eastM);
    expect(easts).toEqual([...easts].sort((a, b) => a - b));
    for (const flag of flags) {
      expect(flag.ground.faults).toEqual([]);
      expect(flag.ground.fromEdgeM).toBeGreaterThanOrEqual(LEAST_FROM_EDGE_M);
    }
  });
});
