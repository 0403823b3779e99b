import type { Club } from '../../shared/atlas/records.ts';
import { nearChances, troubleChances } from '../../shared/planner/chanceList.ts';
import type { PlanOption } from '../../shared/planner/plan.ts';
import { swingWords } from '../../shared/player/swingWords.ts';
import {
  aim,
  chance,
  distance,
  landing,
  leave,
  type Quantity,
  strokes,
  withUnit,
} from '../../shared/units/format.ts';
import { decimals } from '../../shared/units/numerals.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';

interface Fact {
  readonly name: string;
  readonly text: string;
  readonly unit: string;
}

const aimWords: Readonly<Record<string, string>> = { R: 'right', L: 'left' };

function aimFact({ text, unit }: Quantity): Fact {
  const [size, side] = text.split(' ');
  const word = side === undefined ? undefined : aimWords[side];
  return word === undefined
    ? { name: 'Aim', text, unit: '' }
    : { name: 'Aim', text: size ?? '', unit: `${unit} ${word}` };
}

function landFact(option: PlanOption, units: UnitsPreference): Fact {
  if (option.landing === null) return { name: 'Land', text: '–', unit: 'it rolls' };
  if (option.landingOnM === null) return { name: 'Land', text: 'off', unit: 'the green' };
  const { text, unit } = landing(option.landingOnM, units);
  const [count, where] = text.split(' ');
  return where === undefined
    ? { name: 'Land', text: 'on the edge', unit: '' }
    : { name: 'Land', text: count ?? '', unit: `${count === '1' || count === '½' ? 'pace' : unit} ${where}` };
}

function factsOf(
  option: PlanOption,
  units: UnitsPreference,
  narrow: boolean,
  large: boolean,
): readonly Fact[] {
  const carry = distance(option.carryM, units);
  const run = distance(option.runM, units);
  const left = leave(option.leave.medianM, units);
  const all: readonly Fact[] = [
    // What rolls from the start carries nothing.
    ...(option.landing === null ? [] : [{ name: 'Carry', ...carry }]),
    { name: 'Run', ...run },
    landFact(option, units),
    aimFact(aim(option.aimRightM, units)),
  ];
  if (narrow) return all;
  const error = option.standardErrorStrokes;
  return [
    ...all,
    ...(large ? [] : [{ name: 'Usual leave', ...left }]),
    { name: 'Strokes', text: strokes(option.strokes), unit: `±${decimals(Math.max(error, 0.01), 2)}` },
  ];
}

interface FactsProps {
  readonly option: PlanOption;
  /** Of whoever plays it. */
  readonly bag: readonly Club[];
  readonly units: UnitsPreference;
  readonly narrow: boolean;
  readonly large: boolean;
}

/** The numbers of one shot, as a person would be told them. */
export function Facts({ option, bag, units, narrow, large }: FactsProps): React.JSX.Element {
  const chances = [...nearChances(option, units), ...troubleChances(option).filter(({ share }) => share > 0)];
  return (
    <>
      <dl className="facts">
        {factsOf(option, units, narrow, large).map(({ name, text, unit }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              {text}
              {unit !== '' && <span className="unit"> {unit}</span>}
            </dd>
          </div>
        ))}
      </dl>
      <div className="facts-more">
        <p>{swingWords(option, bag, units)}</p>
        <dl aria-label="Chances">
          {chances.map(({ words, share }) => (
            <div key={words}>
              <dt>{words}</dt> <dd>{withUnit(chance(share))}</dd>
            </div>
          ))}
        </dl>
      </div>
    </>
  );
}
