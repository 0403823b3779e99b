import type { PlanePoint } from '../../shared/geometry/points.ts';
import { lineLengthM } from '../../shared/geometry/ring.ts';
import { sectionAlong } from '../../shared/terrain/section.ts';
import { distance, rise, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { Ground } from './useGround.ts';

const WIDTH = 240;
const HEIGHT = 84;
const EDGE = 6;
const SAMPLES = 120;
const SHORTEST_M = 0.5;
/** Heights are drawn larger than lengths by one of these, the most that the frame holds. */
const STRETCHES = [50, 20, 10, 5, 2, 1] as const;

interface LineSectionProps {
  readonly ground: Ground;
  readonly points: readonly PlanePoint[];
  readonly units: UnitsPreference;
}

/** The ground along a measured line, seen from the side. */
export function LineSection({ ground, points, units }: LineSectionProps): React.JSX.Element | null {
  const lengthM = lineLengthM(points);
  if (lengthM < SHORTEST_M) return null;
  const { distancesM, heightsM } = sectionAlong(
    {
      sample: ([eastM = 0, northM = 0], out) => {
        out[0] = ground.heightAt({ eastM, northM });
      },
    },
    points,
    lengthM / SAMPLES,
  );
  const low = Math.min(...heightsM);
  const high = Math.max(...heightsM);
  const start = heightsM[0] ?? low;
  const perM = (WIDTH - 2 * EDGE) / lengthM;
  const room = HEIGHT - 2 * EDGE;
  const stretch = STRETCHES.find((by) => (high - low) * perM * by <= room) ?? 1;
  const y = (heightM: number): number => HEIGHT - EDGE - Math.min(room, (heightM - low) * perM * stretch);
  const line = Array.from(
    heightsM,
    (heightM, i) => `${(EDGE + (distancesM[i] ?? 0) * perM).toFixed(1)},${y(heightM).toFixed(1)}`,
  );
  const words = `Section of ${withUnit(distance(lengthM, units))}; against its start the lowest ground ${rise(low - start, units)}, the highest ${rise(high - start, units)}`;
  return (
    <figure className="line-section">
      <svg viewBox={`0 0 ${String(WIDTH)} ${String(HEIGHT)}`} role="img" aria-label={words}>
        <polyline points={line.join(' ')} />
      </svg>
      <figcaption className="hint">
        Section from the first place to the last
        {stretch > 1 && `, heights drawn ${String(stretch)} times as large`}
      </figcaption>
    </figure>
  );
}
