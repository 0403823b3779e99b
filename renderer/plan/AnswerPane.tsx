import { BookmarkPlus, BookmarkX, Columns2, SlidersHorizontal } from 'lucide-react';
import { optionName, techniqueName } from '../../shared/planner/optionName.ts';
import type { Plan, PlanOption } from '../../shared/planner/plan.ts';
import { reasonText } from '../../shared/planner/reasonText.ts';
import { coverWords } from '../../shared/words/coverWords.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { techniqueRules } from '../../shared/player/technique.ts';
import { distance, strokes, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { SortKey } from '../store/session.ts';
import { TextField } from '../ui/TextField.tsx';
import { lieWords } from '../ui/words.ts';
import { Facts } from './Facts.tsx';
import { Leaves } from './Leaves.tsx';
import { Ledger } from './Ledger.tsx';

export interface AnswerPaneProps {
  readonly plan: Plan;
  readonly option: PlanOption;
  /** "Ball 3, east apron" and "flag B". */
  readonly ballName: string;
  readonly ballLie: keyof typeof lieWords;
  readonly flagLabel: string;
  readonly units: UnitsPreference;
  readonly stage: 'none' | 'coarse' | 'firm';
  readonly stale: boolean;
  readonly pickedId: string | null;
  readonly readOnly: boolean;
  readonly sort: SortKey;
  readonly descending: boolean;
  readonly narrow: boolean;
  readonly large: boolean;
  readonly choose: (id: string) => void;
  readonly sortBy: (key: SortKey) => void;
  readonly pick: (id: string) => void;
  readonly note: string;
  readonly setNote: (note: string) => void;
  readonly handed: 'right' | 'left';
  readonly flag: PlanePoint;
  /** What would change the choice. */
  readonly changes: React.ReactNode;
  /** Shown in place of the ledger and the reasons. */
  readonly instead: React.ReactNode;
  readonly trying: boolean;
  readonly comparing: boolean;
  readonly toggleTry: () => void;
  readonly toggleCompare: () => void;
  readonly unpick: () => void;
}

/** The answer, the ledger of all options, and why. */
export function AnswerPane(props: AnswerPaneProps): React.JSX.Element {
  const { plan, option, ballName, ballLie, flagLabel, units, stage, stale, pickedId, readOnly } = props;
  const advised = option.id === plan.chosenId;
  const advice = plan.options.find(({ id }) => id === plan.chosenId);
  const picked = plan.options.find(({ id }) => id === pickedId);
  return (
    <div className={`answer ${stage === 'coarse' ? 'coarse' : ''} ${stale ? 'stale' : ''}`}>
      <p className="answer-line">
        {ballName}
        {props.narrow ? '' : `, ${coverWords[plan.ballCover]}, ${lieWords[ballLie]}`}, to flag {flagLabel}:{' '}
        {withUnit(distance(plan.distanceM, units))}
      </p>
      <h1 className="answer-name">{answerName(option)}</h1>
      {stale && <p className="stale-note">The ground or the place has changed; refreshing.</p>}
      <Facts option={option} units={units} narrow={props.narrow} large={props.large} />
      {props.instead ?? (
        <>
          <Ledger
            plan={plan}
            units={units}
            chosenId={option.id}
            pickedId={pickedId}
            sort={props.sort}
            descending={props.descending}
            narrow={props.narrow}
            large={props.large}
            coarse={stage === 'coarse'}
            choose={props.choose}
            sortBy={props.sortBy}
          />
          <div className="beneath">
            <section className="why" aria-label={advised ? 'Why this one' : 'Why not this one'}>
              <h2>
                {advised || advice === undefined
                  ? 'Why this one'
                  : `Why not this one: against ${optionName(advice)}`}
              </h2>
              {option.reasons.map((reason, index) => (
                <p key={index}>{reasonText(reason, units)}</p>
              ))}
              <SetUp option={option} handed={props.handed} />
              {plan.leftOut.length > 0 && (
                <details className="left-out">
                  <summary>
                    {plan.leftOut.length === 1
                      ? 'One shot was left out'
                      : `${plan.leftOut.length} shots were left out`}
                  </summary>
                  {plan.leftOut.map(({ id, reason }) => (
                    <p key={id}>{reasonText(reason, units)}</p>
                  ))}
                </details>
              )}
            </section>
            <div className="beneath-right">
              {props.changes}
              {stage === 'firm' && <Leaves option={option} flag={props.flag} units={units} />}
            </div>
          </div>
        </>
      )}
      {!readOnly && (
        <div className="actions">
          {pickedId === option.id ? (
            <button type="button" className="button" onClick={props.unpick}>
              <BookmarkX size={18} strokeWidth={1.9} aria-hidden /> Take out of playbook
            </button>
          ) : (
            <button
              type="button"
              className="button filled"
              disabled={stage === 'none'}
              onClick={() => props.pick(option.id)}
            >
              <BookmarkPlus size={18} strokeWidth={1.9} aria-hidden /> Put in playbook
            </button>
          )}
          {!advised && advice !== undefined && (
            <button type="button" className="button" onClick={() => props.choose(plan.chosenId)}>
              Back to the advice
            </button>
          )}
          <button
            type="button"
            className="button"
            aria-pressed={props.trying}
            disabled={stage !== 'firm'}
            onClick={props.toggleTry}
          >
            <SlidersHorizontal size={18} strokeWidth={1.9} aria-hidden /> Try changes
          </button>
          <button
            type="button"
            className="button"
            aria-pressed={props.comparing}
            disabled={stage !== 'firm' || plan.options.length < 2}
            onClick={props.toggleCompare}
          >
            <Columns2 size={18} strokeWidth={1.9} aria-hidden /> Side by side
          </button>
          {picked !== undefined && advice !== undefined && picked !== advice && (
            <p className="actions-note">
              In the playbook: {optionName(picked)}, {pickDifference(picked, advice)}.
            </p>
          )}
          {pickedId !== null && (
            <label className="actions-words">
              <span>Note</span>
              <TextField value={props.note} commit={props.setNote} />
            </label>
          )}
        </div>
      )}
    </div>
  );
}

/** "Chip with the 46° wedge": the whole name, for the headline. */
function answerName(option: PlanOption): string {
  const { technique, clubName, playAway } = option;
  if (technique === 'putt') return playAway ? 'Play away with the putter' : 'Putt';
  const what = technique === 'highSoft' ? 'High soft shot' : techniqueName(technique);
  return `${playAway ? 'Play away' : what} with the ${clubName}`;
}

function pickDifference(picked: PlanOption, advice: PlanOption): string {
  const cost = picked.strokes - advice.strokes;
  if (Math.abs(cost) < 0.005) return 'level with the advice';
  return `${strokes(Math.abs(cost))} strokes ${cost > 0 ? 'more' : 'fewer'} than the advice`;
}

/** How the shot is set up: common practice of coaching, no more. */
function SetUp({
  option,
  handed,
}: {
  readonly option: PlanOption;
  readonly handed: 'right' | 'left';
}): React.JSX.Element {
  const front = handed === 'right' ? 'left' : 'right';
  return (
    <details className="left-out">
      <summary>How it is set up</summary>
      {techniqueRules[option.technique].setUp.map((line) => (
        <p key={line}>{line.replace('the front foot', `the front (${front}) foot`)}</p>
      ))}
      <p>Common practice; a teacher who sees the swing knows better.</p>
    </details>
  );
}
