import { lineLengthM } from '../../shared/geometry/ring.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { distanceM } from '../../shared/geometry/ring.ts';
import { feetFromMetres, yardsFromMetres } from '../../shared/units/conversions.ts';
import { bearing, compassPoint, paces, rise, slopeOrLevel, withUnit } from '../../shared/units/format.ts';
import { decimals } from '../../shared/units/numerals.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { HandState } from './handState.ts';
import { LineSection } from './LineSection.tsx';
import type { Ground } from './useGround.ts';

interface MeasurePanelProps {
  readonly state: HandState;
  readonly ground: Ground | null;
  readonly units: UnitsPreference;
}

/** Distance in every unit a person uses, the difference in height, and how the ground lies under the pointer. */
export function MeasurePanel({ state, ground, units }: MeasurePanelProps): React.JSX.Element {
  const { measured, cursor, pointer } = state;
  const sketch = state.sketch ?? measured;
  const points = sketch === null ? [] : ending(sketch.corners, sketch.next);
  const first = points[0];
  const last = points.at(-1);
  const lengthM = lineLengthM(points);
  const here = cursor ?? pointer;
  const slope = ground === null || here === null ? null : ground.slopeAt(here);
  const riseM =
    ground === null || first === undefined || last === undefined
      ? null
      : ground.heightAt(last) - ground.heightAt(first);
  return (
    <section className="held" aria-label="Tool in hand">
      <h2>Measure</h2>
      {points.length < 2 ? (
        <p className="hint">Click two places or more, or walk there with the arrow keys and press Enter.</p>
      ) : (
        <dl className="survey-facts">
          <Row name="Yards" value={decimals(yardsFromMetres(lengthM), 1)} />
          <Row name="Feet" value={decimals(feetFromMetres(lengthM), 1)} />
          <Row name={`Paces of ${paceWords(units)}`} value={paces(lengthM, units).text} />
          <Row name="Metres" value={decimals(lengthM, 2)} />
          {riseM !== null && (
            <>
              <Row name="Height" value={rise(riseM, units)} />
              <Row
                name="Grade"
                value={slopeOrLevel((100 * riseM) / Math.max(distanceBetween(first, last), 0.01))}
              />
            </>
          )}
        </dl>
      )}
      {ground !== null && points.length > 1 && <LineSection ground={ground} points={points} units={units} />}
      {slope !== null && (
        <p className="held-facts">
          Under the pointer {slopeOrLevel(slope.slopePct)}
          {slope.slopePct >= 0.05 &&
            `, falling to ${withUnit(bearing(slope.downhillBearingDeg))} (${compassPoint(slope.downhillBearingDeg)})`}
        </p>
      )}
      <p className="hint">
        {measured !== null ? (
          <>
            The next click begins another, <kbd>Esc</kbd> puts this one away.
          </>
        ) : (
          <>
            <kbd>Enter</kbd> ends it, <kbd>Esc</kbd> lets go.
          </>
        )}
      </p>
    </section>
  );
}

const paceWords = ({ paceM, system }: UnitsPreference): string =>
  system === 'yards' ? `${decimals(feetFromMetres(paceM) * 12, 0)} in` : `${decimals(paceM, 2)} m`;

const distanceBetween = (a: PlanePoint | undefined, b: PlanePoint | undefined): number =>
  a === undefined || b === undefined ? 0 : distanceM(a, b);

function ending(corners: readonly PlanePoint[], next: PlanePoint | null): readonly PlanePoint[] {
  const last = corners.at(-1);
  return next === null || last === undefined || distanceM(last, next) < 0.01 ? corners : [...corners, next];
}

function Row({ name, value }: { readonly name: string; readonly value: string }): React.JSX.Element {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{value}</dd>
    </div>
  );
}
