import { BookmarkPlus, BookmarkX, Columns2, SlidersHorizontal, Users } from 'lucide-react';
import { memo } from 'react';
import type { Club, PlayerRecord } from '../../shared/atlas/records.ts';
import { optionName, techniqueName } from '../../shared/planner/optionName.ts';
import type { Plan, PlanOption } from '../../shared/planner/plan.ts';
import { coverWords } from '../../shared/words/coverWords.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { distance, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { Derived } from '../store/planStore.ts';
import type { SortKey } from '../store/session.ts';
import { TextField } from '../ui/TextField.tsx';
import { lieWords } from '../ui/words.ts';
import { Beneath } from './Beneath.tsx';
import { Facts } from './Facts.tsx';
import { Ledger } from './Ledger.tsx';
import { type AdviceHolds, costWords, Standing } from './Standing.tsx';
import type { Panel } from './usePanel.ts';
import './answer.css';

export interface AnswerPaneProps {
  readonly plan: Plan;
  readonly option: PlanOption;
  /** "Ball 3, east apron" and "flag B". */
  readonly ballName: string;
  readonly ballLie: keyof typeof lieWords;
  readonly flagLabel: string;
  readonly player: PlayerRecord;
  /** Of whoever plays the option shown. */
  readonly bag: readonly Club[];
  /** How far the advice holds, once that is known. */
  readonly holds: AdviceHolds | null;
  readonly units: UnitsPreference;
  readonly stage: 'none' | 'coarse' | 'firm';
  readonly stale: Derived['stale'];
  /** The firm answer was given up. */
  readonly stopped: boolean;
  readonly planAgain: () => void;
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
  /** Told of a firm answer only. */
  readonly flag: PlanePoint;
  /** The ball or the flag is under way, or they are walked through. */
  readonly moving: boolean;
  /** What would change the choice. */
  readonly changes: React.ReactNode;
  /** Shown in place of the ledger and the reasons. */
  readonly instead: React.ReactNode;
  readonly panel: Panel;
  readonly unpick: () => void;
}

/** The answer, the ledger of all options, and why. */
export const AnswerPane = memo(function AnswerPane(props: AnswerPaneProps): React.JSX.Element {
  const { plan, option, ballName, ballLie, flagLabel, units, stage, stale, pickedId, readOnly } = props;
  const advice = plan.options.find(({ id }) => id === plan.chosenId);
  const picked = plan.options.find(({ id }) => id === pickedId);
  const { panel } = props;
  // A shot tried, or another player's, may be none of this plan's own.
  const listed = plan.options.includes(option);
  return (
    <div
      className={`answer ${stage === 'coarse' ? 'coarse' : ''} ${stale === false ? '' : 'stale'}`}
      onKeyDown={(event) => {
        // Escape closes what is open in place of the ledger, and leads back to what opened it.
        if (event.key !== 'Escape' || panel.kind === null) return;
        event.currentTarget.querySelector<HTMLElement>('.actions [aria-pressed=true]')?.focus();
        panel.close();
      }}
    >
      <p className="answer-line">
        {ballName}
        {props.narrow ? '' : untold(ballName, [coverWords[plan.ballCover], lieWords[ballLie]])}, to flag{' '}
        {flagLabel}: {withUnit(distance(plan.distanceM, units))}
      </p>
      <h1 className="answer-name">
        <AnswerName option={option} />
      </h1>
      <Standing
        option={option}
        advice={advice ?? null}
        listed={listed}
        coarse={stage === 'coarse'}
        holds={props.holds}
        stale={stale}
        stopped={props.stopped}
        planAgain={props.planAgain}
        toAdvice={() => {
          panel.close();
          props.choose(plan.chosenId);
        }}
      />
      <Facts option={option} bag={props.bag} units={units} narrow={props.narrow} large={props.large} />
      {props.instead ?? (
        <>
          <Ledger
            plan={plan}
            units={units}
            player={props.player}
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
          <Beneath
            plan={plan}
            option={option}
            stage={stage}
            flag={props.flag}
            changes={props.changes}
            handed={props.handed}
            units={units}
            large={props.large}
            moving={props.moving}
          />
        </>
      )}
      <div className="actions">
        {!readOnly &&
          (pickedId === option.id ? (
            <button type="button" className="button" aria-label="Take out of playbook" onClick={props.unpick}>
              <BookmarkX size={18} strokeWidth={1.9} aria-hidden />{' '}
              {props.narrow && props.large ? 'Take out' : 'Take out of playbook'}
            </button>
          ) : (
            <button
              type="button"
              className="button filled"
              disabled={stage === 'none' || !listed}
              title={listed ? undefined : 'Only a shot of the list goes in the playbook: press Done first'}
              onClick={() => props.pick(option.id)}
            >
              <BookmarkPlus size={18} strokeWidth={1.9} aria-hidden /> Put in playbook
            </button>
          ))}
        <button
          type="button"
          className="button"
          aria-pressed={panel.settings !== null}
          disabled={stage !== 'firm'}
          onClick={() => panel.toggle('try')}
        >
          <SlidersHorizontal size={18} strokeWidth={1.9} aria-hidden /> Try changes
        </button>
        <button
          type="button"
          className="button"
          aria-pressed={panel.besideIds !== null}
          disabled={stage !== 'firm' || plan.options.length < 2}
          onClick={() => panel.toggle('beside')}
        >
          <Columns2 size={18} strokeWidth={1.9} aria-hidden /> Side by side
        </button>
        <button
          type="button"
          className="button"
          aria-pressed={panel.players}
          onClick={() => panel.toggle('players')}
        >
          <Users size={18} strokeWidth={1.9} aria-hidden /> Players
        </button>
        {picked !== undefined && advice !== undefined && picked !== advice && (
          <p className="actions-note">
            In the playbook: {optionName(picked)}, {uncapital(costWords(picked, advice))}.
          </p>
        )}
        {pickedId !== null && picked === undefined && stage === 'firm' && (
          <p className="actions-note">
            The shot in the playbook is no option any more.
            {!readOnly && (
              <>
                {' '}
                Put another in, or{' '}
                <button type="button" className="link-button" onClick={props.unpick}>
                  take it out
                </button>
                .
              </>
            )}
          </p>
        )}
        {pickedId !== null && !readOnly && (
          <label className="actions-words">
            <span>Note</span>
            <TextField value={props.note} commit={props.setNote} />
          </label>
        )}
      </div>
    </div>
  );
});

/** "Chip with the 46° wedge": the whole name, for the headline, which does not break inside a club. */
function AnswerName({ option }: { readonly option: PlanOption }): React.JSX.Element {
  const { technique, clubName, playAway } = option;
  if (technique === 'putt') return <>{playAway ? 'Play away with the putter' : 'Putt'}</>;
  const what = technique === 'highSoft' ? 'High soft shot' : techniqueName(technique);
  return (
    <>
      {playAway ? 'Play away' : what} with the <span className="whole">{clubName}</span>
    </>
  );
}

/** ", light rough, sitting down": what is to be told besides the name, which often says some of it. */
const untold = (name: string, words: readonly string[]): string =>
  words.flatMap((word) => (name.toLowerCase().includes(word) ? [] : `, ${word}`)).join('');

const uncapital = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
