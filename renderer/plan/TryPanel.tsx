import { Minus, Plus, RotateCcw } from 'lucide-react';
import { useRef } from 'react';
import { recordsOf } from '../../shared/atlas/document.ts';
import type { AtlasDocument, PlayerRecord } from '../../shared/atlas/records.ts';
import { planePoint, type PlanePoint } from '../../shared/geometry/points.ts';
import { optionName, techniqueName } from '../../shared/planner/optionName.ts';
import type { Plan, PlanOption } from '../../shared/planner/plan.ts';
import type { SceneBall } from '../../shared/planner/scene.ts';
import type { TriedShot } from '../../shared/planner/tryShot.ts';
import { coverWords } from '../../shared/words/coverWords.ts';
import { metresFromFeet } from '../../shared/units/conversions.ts';
import { landing, strokes } from '../../shared/units/format.ts';
import { signed } from '../../shared/units/numerals.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { techniques } from '../../shared/words/vocabulary.ts';
import { LieFields } from '../ui/LieFields.tsx';
import { useGiveFocusBack } from '../ui/giveFocusBack.ts';
import { Trouble, type TroubleWords } from '../ui/Trouble.tsx';
import { lieWords } from '../ui/words.ts';
import { figureRows } from './figureRows.ts';
import { levelKey, levelPresets } from './levels.ts';
import { aimWords } from './shotLabels.ts';
import type { TrySettings } from './trySettings.ts';
import './compare.css';
import './tryPanel.css';

interface TryPanelProps {
  readonly document: AtlasDocument;
  readonly player: PlayerRecord;
  readonly plan: Plan;
  readonly ball: SceneBall;
  readonly flag: PlanePoint;
  readonly settings: TrySettings;
  readonly tried: TriedShot | null;
  readonly trouble: TroubleWords | null;
  readonly units: UnitsPreference;
  readonly change: (change: Partial<TrySettings>) => void;
  readonly reset: () => void;
  readonly close: () => void;
}

const AS_IS = 'as-is';

/** Change one thing about the shot or the circumstances, and see what it costs or saves. */
export function TryPanel(props: TryPanelProps): React.JSX.Element {
  const panel = useRef<HTMLElement>(null);
  useGiveFocusBack(panel);
  const { document, player, plan, ball, settings, tried, units, change } = props;
  const days = recordsOf(document, 'conditions');
  const rolled = settings.technique === 'putt';
  const planned = plannedBeside(plan, settings);
  const clubs = player.bag.filter(({ kind }) => (kind === 'putter') === rolled);
  return (
    <section className="try" ref={panel} aria-label="Try changes">
      <div className="compare-head">
        <h2>Try changes</h2>
        <button type="button" className="link-button" onClick={props.reset}>
          <RotateCcw size={14} strokeWidth={1.9} aria-hidden /> Start again
        </button>
        <button type="button" className="link-button" onClick={props.close}>
          Done
        </button>
      </div>
      <p className="try-outcome" role="status">
        {tried !== null && outcomeWords(tried, planned)}
      </p>
      <div className="try-form">
        <label>
          <span>Shot</span>
          <select
            value={settings.technique}
            onChange={({ target }) => {
              const technique = techniques.find((one) => one === target.value) ?? settings.technique;
              const wants = technique === 'putt';
              const fits =
                player.bag.find(({ id }) => id === settings.clubId)?.kind === 'putter' ? wants : !wants;
              const other = player.bag.find(({ kind }) => (kind === 'putter') === wants);
              change({
                technique,
                landing: null,
                clubId: fits ? settings.clubId : (other?.id ?? settings.clubId),
              });
            }}
          >
            {techniques.map((technique) => (
              <option key={technique} value={technique}>
                {techniqueName(technique)}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>Club</span>
          <select value={settings.clubId} onChange={({ target }) => change({ clubId: target.value })}>
            {clubs.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <Stepper
          name="Land"
          text={
            rolled
              ? 'it rolls'
              : typeof tried?.tried.landingOnM === 'number'
                ? landing(tried.tried.landingOnM, units).text
                : '–'
          }
          less="Land shorter"
          more="Land further on"
          disabled={rolled || tried === null}
          step={(by) => {
            const from = settings.landing ?? tried?.tried.landing ?? null;
            if (from !== null) change({ landing: along(ball.at, props.flag, from, by * 0.5 * units.paceM) });
          }}
        />
        <Stepper
          name="Size"
          text={settings.sizePct === 0 ? 'as needed' : `${signed(settings.sizePct, 0)}\u00a0%`}
          less="Smaller"
          more="Bigger"
          step={(by) => change({ sizePct: Math.max(-40, Math.min(60, settings.sizePct + 4 * by)) })}
        />
        <Stepper
          name="Aim"
          text={tried === null ? '–' : aimWords(tried.tried.aimRightM, units)}
          less="Aim further left"
          more="Aim further right"
          step={(by) => change({ aimShiftM: settings.aimShiftM + by * metresFromFeet(0.5) })}
        />
        <LieFields
          chosen={settings}
          asIs={{
            cover: `${coverWords[plan.ballCover]}, as it is`,
            lie: `${lieWords[ball.record.lie]}, as it is`,
            moisture: 'as it is',
          }}
          change={change}
        />
        <label>
          <span>Day</span>
          <select
            value={settings.dayId ?? AS_IS}
            onChange={({ target }) => change({ dayId: target.value === AS_IS ? null : target.value })}
          >
            <option value={AS_IS}>as it is</option>
            {days.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>Level</span>
          <select
            value={settings.level === null ? AS_IS : levelKey(settings.level)}
            onChange={({ target }) =>
              change({ level: levelPresets.find(({ key }) => key === target.value)?.level ?? null })
            }
          >
            <option value={AS_IS}>{player.name}</option>
            {levelPresets.map(({ key, words }) => (
              <option key={key} value={key}>
                {words}
              </option>
            ))}
          </select>
        </label>
      </div>
      <p className="try-hint">
        {rolled
          ? 'It starts from its best aim.'
          : 'It starts from its best landing spot and aim; the spot can be dragged on the plate.'}
      </p>
      {props.trouble !== null && <Trouble trouble={props.trouble} />}
      {tried !== null && <Outcome tried={tried} planned={planned} units={units} />}
    </section>
  );
}

interface StepperProps {
  readonly name: string;
  readonly text: string;
  readonly less: string;
  readonly more: string;
  readonly disabled?: boolean;
  readonly step: (by: 1 | -1) => void;
}

function Stepper({ name, text, less, more, disabled = false, step }: StepperProps): React.JSX.Element {
  return (
    <div className="stepper" role="group" aria-label={name}>
      <span>{name}</span>
      <button
        type="button"
        className="icon-button"
        aria-label={less}
        title={less}
        disabled={disabled}
        onClick={() => step(-1)}
      >
        <Minus size={15} strokeWidth={1.9} aria-hidden />
      </button>
      <output>{text}</output>
      <button
        type="button"
        className="icon-button"
        aria-label={more}
        title={more}
        disabled={disabled}
        onClick={() => step(1)}
      >
        <Plus size={15} strokeWidth={1.9} aria-hidden />
      </button>
    </div>
  );
}

/** The same shot as it was planned, where lie, day or level were changed: what they cost is what is asked. */
function plannedBeside(
  { options }: Plan,
  { technique, clubId, cover, lie, moisture, dayId, level }: TrySettings,
): PlanOption | null {
  if ([cover, lie, moisture, dayId, level].every((one) => one === null)) return null;
  return options.find(({ id }) => id === `${technique}:${clubId}`) ?? null;
}

function outcomeWords(
  { tried, costStrokes, standardErrorStrokes }: TriedShot,
  planned: PlanOption | null,
): string {
  const sure = standardErrorStrokes !== null && Math.abs(costStrokes ?? 0) > 2 * standardErrorStrokes;
  const beside =
    costStrokes === null
      ? 'There the advice would be another shot.'
      : !sure && Math.abs(costStrokes) < 0.05
        ? 'Level with the advice.'
        : `${strokes(Math.abs(costStrokes))} strokes ${costStrokes > 0 ? 'more' : 'fewer'} than the advice${sure ? '' : ', as far as these shots can tell'}.`;
  return planned === null
    ? beside
    : `${strokes(tried.strokes)} strokes like this, ${strokes(planned.strokes)} as planned. ${beside}`;
}

function Outcome({
  tried: { tried, advised },
  planned,
  units,
}: {
  readonly tried: TriedShot;
  readonly planned: PlanOption | null;
  readonly units: UnitsPreference;
}): React.JSX.Element {
  const cells = figureRows(units, ['swing', 'reach', 'half', 'upAndDown', 'trouble', 'strokes']);
  return (
    <table>
      <caption className="unseen">The shot tried against the advice</caption>
      <thead>
        <tr>
          <td />
          <th scope="col" className="first">
            <span className="compare-key" aria-hidden /> Tried
          </th>
          {advised !== null && (
            <th scope="col">
              <span className="compare-key" aria-hidden /> {optionName(advised)}
            </th>
          )}
          {planned !== null && <th scope="col">As planned</th>}
        </tr>
      </thead>
      <tbody>
        {cells.map(({ words: name, cell }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{cell(tried)}</td>
            {advised !== null && <td>{cell(advised)}</td>}
            {planned !== null && <td>{cell(planned)}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** A place moved along the line from ball to flag. */
function along(ball: PlanePoint, flag: PlanePoint, from: PlanePoint, byM: number): PlanePoint {
  const east = flag.eastM - ball.eastM;
  const north = flag.northM - ball.northM;
  const length = Math.max(0.1, Math.hypot(east, north));
  return planePoint(from.eastM + (east / length) * byM, from.northM + (north / length) * byM);
}
