import { slope, smallHeight, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { Ground } from './useGround.ts';

interface MeasurementsProps {
  readonly heights: number;
  readonly slopes: number;
  readonly ground: Ground | null;
  readonly units: UnitsPreference;
}

/** A surface that passes this near a reading fits it. */
const FIT = { yards: { m: 0.0127, words: '½ in' }, metres: { m: 0.01, words: '1 cm' } } as const;
/** A metre, over which the doubt of a slope is told. */
const METRE = { yards: '3.3\u00a0ft', metres: '1\u00a0m' } as const;

/** How much is measured, how well it agrees, and how sure the ground is. */
export function Measurements({ heights, slopes, ground, units }: MeasurementsProps): React.JSX.Element {
  const fit = FIT[units.system];
  const fitted = ground?.read.readings.filter(({ kind }) => kind === 'height') ?? [];
  const close = fitted.filter(({ residual }) => Math.abs(residual) <= fit.m).length;
  const doubt = ground?.read.doubt ?? null;
  return (
    <section aria-label="Measurements">
      <h2>Measurements</h2>
      <dl className="survey-facts">
        <Row name="Spot heights" value={String(heights)} />
        <Row name="Slope readings" value={String(slopes)} />
        {fitted.length > 0 && (
          <Row
            name={`Fits within ${fit.words}${fitted.length === heights ? '' : ', this hole'}`}
            value={`${String(close)} of ${String(fitted.length)}`}
          />
        )}
        {doubt !== null && (
          <>
            <Row
              name="Height doubt on the green"
              value={`±${withUnit(smallHeight(doubt.heightSdM, units))}`}
            />
            <Row
              name={`Slope doubt there, over ${METRE[units.system]}`}
              value={`±${withUnit(slope(doubt.slopeSdPct))}`}
            />
          </>
        )}
      </dl>
      {ground === null && (
        <p className="hint">A dozen heights on and round the green let Swale read its slopes.</p>
      )}
    </section>
  );
}

function Row({ name, value }: { readonly name: string; readonly value: string }): React.JSX.Element {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{value}</dd>
    </div>
  );
}
