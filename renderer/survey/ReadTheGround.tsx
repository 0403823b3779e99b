import { useStore } from 'zustand';
import { contourStepsM, contourStepWords } from '../../shared/plate/contourSteps.ts';
import { fairSlopeLimitPct, LEAST_FROM_EDGE_M } from '../../shared/terrain/flagGround.ts';
import { greenSpeed, paces, slope, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import './readGround.css';
import { groundLook, type LookChoice } from './groundLook.ts';

const choices = [
  ['slopes', 'Slopes in percent'],
  ['arrows', 'Fall arrows'],
  ['water', 'Ways of water'],
  ['fair', 'Fair ground for a flag'],
] as const satisfies readonly (readonly [keyof LookChoice, string])[];

interface ReadTheGroundProps {
  readonly stimpFt: number;
  readonly units: UnitsPreference;
  /** Contours are drawn half as close. */
  readonly largeType: boolean;
}

/** What the plate shows of how the ground lies. */
export function ReadTheGround({ stimpFt, units, largeType }: ReadTheGroundProps): React.JSX.Element {
  const look = useStore(groundLook);
  return (
    <section aria-label="Read the ground">
      <h2>Read the ground</h2>
      <div className="read-ground">
        {choices.map(([key, words]) => (
          <label key={key}>
            <input
              type="checkbox"
              checked={look[key]}
              onChange={({ target }) => groundLook.setState({ [key]: target.checked })}
            />
            {words}
          </label>
        ))}
        <label>
          <span>Contours every</span>
          <select
            value={look.contourStep}
            onChange={({ target }) => groundLook.setState({ contourStep: Number(target.value) })}
          >
            {contourStepsM(units).map((stepM, step) => (
              <option key={step} value={step}>
                {contourStepWords(largeType ? 2 * stepM : stepM, units)}
              </option>
            ))}
          </select>
        </label>
      </div>
      {look.fair && (
        <p className="hint">
          Small squares: nearly even within {units.system === 'yards' ? '3 ft' : '0.9 m'}, no more than{' '}
          {withUnit(slope(fairSlopeLimitPct(stimpFt)))} at a green speed of {withUnit(greenSpeed(stimpFt))},{' '}
          {withUnit(paces(LEAST_FROM_EDGE_M, units))} from the edge. The Committee has the last word.
        </p>
      )}
    </section>
  );
}
