import { Diamond } from 'lucide-react';
import { useEffect, useMemo } from 'react';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { optionName } from '../../shared/planner/optionName.ts';
import type { Plan, PlanOption } from '../../shared/planner/plan.ts';
import type { OptionDoubt, SurveyDoubt as Doubt } from '../../shared/planner/surveyDoubt.ts';
import { type PlanQuestion, USUAL_SEED, USUAL_SHOTS } from '../../shared/protocol/planning.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { distance, leave, percent, type Quantity, strokes, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { measureSpots } from '../store/measureSpots.ts';
import { useSettled } from '../store/useSettled.ts';
import type { Planning } from '../store/planning.ts';
import { sessionStore } from '../store/session.ts';
import { Trouble } from '../ui/Trouble.tsx';
import './surveyDoubt.css';
import { useSurveyDoubt } from './useSurveyDoubt.ts';

interface SurveyDoubtProps {
  readonly planning: Pick<Planning, 'surveyDoubt'>;
  readonly document: AtlasDocument;
  readonly plan: Plan;
  /** The option looked at. */
  readonly option: PlanOption;
  readonly units: UnitsPreference;
  /** Balls and flags are being walked through: the plan is not looked at for long enough to ask. */
  readonly walking: boolean;
}

/** How sure the survey makes the choice and the line looked at, and where one more reading would help most. */
export function SurveyDoubt({
  planning,
  document,
  plan,
  option,
  units,
  walking,
}: SurveyDoubtProps): React.JSX.Element | null {
  const { scene, stage, held } = useSettled();
  const { ballId, flagId } = plan;
  const question = useMemo<PlanQuestion | null>(
    () =>
      scene === null || stage !== 'firm' || held !== null || walking
        ? null
        : { document, holeId: scene.hole.id, ballId, flagId, shotsPerOption: USUAL_SHOTS, seed: USUAL_SEED },
    [document, scene, stage, held, walking, ballId, flagId],
  );
  const now = useSurveyDoubt(planning, `${scene?.key ?? ''} ${ballId} ${flagId}`, question);
  const { doubt } = now;
  const ball = scene?.balls.find(({ record }) => record.id === ballId);
  const flag = scene?.flags.find(({ record }) => record.id === flagId);
  const holeId = scene?.hole.id ?? null;
  const shot = `ball ${ball?.record.label ?? ''} to flag ${flag?.record.label ?? ''}`;
  useEffect(() => {
    measureSpots.setState({ holeId, shot, spots: doubt?.measureNext ?? [] });
  }, [holeId, shot, doubt]);
  if (scene === null || stage !== 'firm' || ball === undefined || flag === undefined) return null;
  return (
    <section className="changes survey-doubt" aria-label="How sure the survey makes it">
      <h2>How sure the survey makes it</h2>
      {now.trouble !== null && <Trouble trouble={now.trouble} />}
      {now.share !== null && (
        <p className="changes-wait">
          Trying other ground that fits the readings, {percent(100 * now.share)}{' '}
          <button type="button" className="link-button" onClick={now.stop}>
            Stop
          </button>
        </p>
      )}
      {now.stopped && (
        <p className="changes-wait">
          Not worked out.{' '}
          <button type="button" className="link-button" onClick={now.start}>
            Work it out
          </button>
        </p>
      )}
      {question === null && doubt === null && !now.stopped && (
        <p className="changes-wait">Worked out once nothing moves.</p>
      )}
      {doubt !== null && (
        <>
          <p role="status">{choiceWords(doubt)}</p>
          <LineDoubt own={doubt.options.find(({ id }) => id === option.id)} option={option} units={units} />
          {doubt.options.length > 1 && <AllLines doubt={doubt} plan={plan} units={units} />}
          <Spots doubt={doubt} ball={ball.at} flag={flag.at} units={units} />
        </>
      )}
    </section>
  );
}

const choiceWords = ({ holds, surfaces }: Doubt): string =>
  holds === surfaces
    ? `The choice is the same on all ${String(surfaces)} surfaces that agree with the readings.`
    : `The choice is the same on ${String(holds)} of ${String(surfaces)} surfaces that agree with the readings.`;

function LineDoubt({
  own,
  option,
  units,
}: {
  readonly own: OptionDoubt | undefined;
  readonly option: PlanOption;
  readonly units: UnitsPreference;
}): React.JSX.Element {
  if (own === undefined)
    return <p>This shot costs too much for the choice to turn on it, so it was not tried on other ground.</p>;
  const byShots = option.standardErrorStrokes;
  const whole = Math.sqrt(own.strokesSd ** 2 + byShots ** 2);
  return (
    <p>
      This line: aim {within(own.aimSdM, units)}, finish {within(own.alongSdM, units)} long or short and{' '}
      {within(own.asideSdM, units)} aside. Strokes ±{strokes(atLeast(whole))}: ±
      {strokes(atLeast(own.strokesSd))} from the survey, ±{strokes(atLeast(byShots))} from the number of shots
      tried.
    </p>
  );
}

function AllLines({
  doubt,
  plan,
  units,
}: {
  readonly doubt: Doubt;
  readonly plan: Plan;
  readonly units: UnitsPreference;
}): React.JSX.Element {
  return (
    <details className="left-out">
      <summary>Every option</summary>
      <table>
        <caption className="unseen">How sure each option is, by the survey alone</caption>
        <thead>
          <tr>
            <th scope="col">Option</th>
            <th scope="col">Aim</th>
            <th scope="col">Strokes</th>
            <th scope="col">Chosen</th>
          </tr>
        </thead>
        <tbody>
          {doubt.options.map(({ id, aimSdM, strokesSd, chosen }) => {
            const option = plan.options.find((one) => one.id === id);
            return option === undefined ? null : (
              <tr key={id}>
                <th scope="row">{optionName(option)}</th>
                <td>{within(aimSdM, units)}</td>
                <td>±{strokes(atLeast(strokesSd))}</td>
                <td>
                  {Math.round(chosen * doubt.surfaces)} of {doubt.surfaces}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </details>
  );
}

function Spots({
  doubt,
  ball,
  flag,
  units,
}: {
  readonly doubt: Doubt;
  readonly ball: PlanePoint;
  readonly flag: PlanePoint;
  readonly units: UnitsPreference;
}): React.JSX.Element | null {
  if (doubt.measureNext.length === 0) return null;
  const goTo = (at: PlanePoint): void => {
    measureSpots.setState({ wanted: at });
    sessionStore.setState({ workspace: 'survey' });
  };
  return (
    <>
      <h3>One more reading, where it helps most</h3>
      <ol className="spots">
        {doubt.measureNext.map(({ at, reduction }, i) => (
          <li key={`${String(at.eastM)} ${String(at.northM)}`}>
            <Diamond size={16} strokeWidth={1.9} className="doubt-ink" aria-hidden />
            <span>
              {placeWords(at, ball, flag, units)}: {percent(Math.max(1, 100 * reduction))} less doubt
            </span>
            <button
              type="button"
              className="link-button"
              aria-label={`Show spot ${String(i + 1)} in the survey`}
              onClick={() => goTo(at)}
            >
              Go there
            </button>
          </li>
        ))}
      </ol>
    </>
  );
}

/** Beyond this a place is told as shots are, in yards. */
const NEAR_M = 9;

/** "8 ft short of the flag, 3 ft left", "19 yd short of the flag", seen from the ball. */
function placeWords(at: PlanePoint, ball: PlanePoint, flag: PlanePoint, units: UnitsPreference): string {
  const east = flag.eastM - ball.eastM;
  const north = flag.northM - ball.northM;
  const length = Math.max(0.01, Math.hypot(east, north));
  const dx = at.eastM - flag.eastM;
  const dy = at.northM - flag.northM;
  const beyond = (dx * east + dy * north) / length;
  const right = (dx * north - dy * east) / length;
  const told = (m: number): Quantity => (m < NEAR_M ? leave(m, units) : distance(m, units));
  const along = told(Math.abs(beyond));
  const aside = told(Math.abs(right));
  const parts = [
    nothing(along) ? '' : `${withUnit(along)} ${beyond > 0 ? 'beyond' : 'short of'} the flag`,
    nothing(aside)
      ? ''
      : `${withUnit(aside)} ${right > 0 ? 'right' : 'left'}${nothing(along) ? ' of the flag' : ''}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'At the flag' : parts.join(', ');
}

/** "±1½ ft"; what rounds to nothing is less than the step. */
function within(deviationM: number, units: UnitsPreference): string {
  const said = leave(deviationM, units);
  return nothing(said) ? `within ${units.system === 'yards' ? '½ ft' : '0.1 m'}` : `±${withUnit(said)}`;
}

const nothing = ({ text }: Quantity): boolean => Number(text) === 0;
const atLeast = (value: number): number => Math.max(0.01, value);
