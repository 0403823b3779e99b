import { ChevronDown } from 'lucide-react';
import { memo } from 'react';
import { inUseOf, recordsOf } from '../../shared/atlas/document.ts';
import { type Edit, useRecord as recordInUse } from '../../shared/atlas/edits.ts';
import type { AtlasDocument, PlayerRecord } from '../../shared/atlas/records.ts';
import { greenSpeed, windWords, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { firmnessWord } from '../../shared/words/firmnessWord.ts';
import { groupNames } from '../store/ballGroups.ts';
import { GroupSelect } from '../ui/GroupSelect.tsx';
import { Menu, type MenuGroup } from '../ui/Menu.tsx';
import { Chooser, type Choice } from './Chooser.tsx';
import './contextStrip.css';

interface ContextStripProps {
  readonly document: AtlasDocument;
  readonly balls: readonly Choice[];
  readonly flags: readonly Choice[];
  readonly ballId: string | null;
  readonly flagId: string | null;
  readonly units: UnitsPreference;
  /** The group of balls that alone is shown; null shows every ball. */
  readonly group: string | null;
  readonly holeId: string;
  readonly chooseGroup: (name: string | null) => void;
  readonly chooseBall: (id: string) => void;
  readonly chooseFlag: (id: string) => void;
  readonly onKeyDown: (event: React.KeyboardEvent) => void;
  readonly readOnly: boolean;
  readonly edit: (edit: Edit) => void;
  readonly open: (workspace: 'positions' | 'player') => void;
}

function levelWords({ level }: PlayerRecord): string {
  if (level.kind === 'handicap') return String(level.handicap);
  return level.kind === 'tour' ? 'tour' : 'beginner';
}

interface SwitchProps {
  readonly words: string;
  /** Said where there is room for it. */
  readonly more?: string;
}

function Switch({ words, more }: SwitchProps): React.JSX.Element {
  return (
    <>
      <span>
        {words}
        {more !== undefined && <span className="roomy">, {more}</span>}
      </span>{' '}
      <ChevronDown size={14} strokeWidth={1.9} aria-hidden />
    </>
  );
}

/** The days or players of the atlas, and where they are changed. */
function switchMenu(
  title: string,
  type: 'conditions' | 'player',
  all: readonly { readonly id: string; readonly name: string }[],
  inUseId: string,
  more: string,
  workspace: 'positions' | 'player',
  { readOnly, edit, open }: Pick<ContextStripProps, 'readOnly' | 'edit' | 'open'>,
): readonly MenuGroup[] {
  return [
    {
      title,
      items: all.map(({ id, name }) => ({
        key: id,
        label: name,
        checked: id === inUseId,
        disabled: readOnly,
        run: () => {
          if (id !== inUseId) edit(recordInUse(`chose ${name}`, type, id));
        },
      })),
    },
    { title: 'Change', items: [{ key: 'more', label: more, run: () => open(workspace) }] },
  ];
}

/** What the plan is about: the ball and the flag, the day, the player. */
export const ContextStrip = memo(function ContextStrip(props: ContextStripProps): React.JSX.Element {
  const { document, balls, flags, ballId, flagId, units, chooseBall, chooseFlag, onKeyDown } = props;
  const days = recordsOf(document, 'conditions');
  const day = inUseOf(document, 'conditions');
  const groups = groupNames(
    recordsOf(document, 'ballPosition').filter((ball) => ball.holeId === props.holeId),
  );
  const players = recordsOf(document, 'player');
  const player = inUseOf(document, 'player');
  return (
    <section className="strip" aria-label="Ball, flag, day and player" onKeyDown={onKeyDown}>
      <GroupSelect names={groups} chosen={props.group} choose={props.chooseGroup} />
      <Chooser title="Ball" shape="balls" choices={balls} chosenId={ballId} choose={chooseBall} />
      <Chooser title="Flag" shape="flags" choices={flags} chosenId={flagId} choose={chooseFlag} />
      <dl className="strip-facts">
        {day !== undefined && (
          <>
            <div>
              <dt>Day</dt>
              <dd>
                <Menu
                  className="strip-menu"
                  align="end"
                  groups={switchMenu(
                    'Day',
                    'conditions',
                    days,
                    day.id,
                    'Change its numbers',
                    'positions',
                    props,
                  )}
                  button={<Switch words={day.name} />}
                />
              </dd>
            </div>
            <div className="wide">
              <dt>Green speed</dt>
              <dd>{withUnit(greenSpeed(day.stimpFt))}</dd>
            </div>
            <div className="wide">
              <dt>Ground</dt>
              <dd>
                {firmnessWord(day.firmness)}, {day.moisture}
              </dd>
            </div>
            <div className="wide">
              <dt>Wind</dt>
              <dd>{windWords(day.windMps, day.windFromDeg, units)}</dd>
            </div>
            {day.flagstickIn === true && (
              <div className="wide">
                <dt>Flagstick</dt>
                <dd>in</dd>
              </div>
            )}
          </>
        )}
        {player !== undefined && (
          <div className={day === undefined ? '' : 'apart'}>
            <dt>Player</dt>
            <dd>
              <Menu
                className="strip-menu"
                align="end"
                groups={switchMenu(
                  'Player',
                  'player',
                  players,
                  player.id,
                  'Bag, level and shots',
                  'player',
                  props,
                )}
                button={<Switch words={player.name} more={levelWords(player)} />}
              />
            </dd>
          </div>
        )}
      </dl>
    </section>
  );
});
