import { recordsOf } from '../../shared/atlas/document.ts';
import type { AtlasDocument, PlayerRecord } from '../../shared/atlas/records.ts';
import { compassPoint, greenSpeed, wind, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { Chooser, type Choice } from './Chooser.tsx';

interface ContextStripProps {
  readonly document: AtlasDocument;
  readonly balls: readonly Choice[];
  readonly flags: readonly Choice[];
  readonly ballId: string | null;
  readonly flagId: string | null;
  readonly units: UnitsPreference;
  readonly chooseBall: (id: string) => void;
  readonly chooseFlag: (id: string) => void;
  readonly onKeyDown: (event: React.KeyboardEvent) => void;
}

const firmnessWord = (firmness: number): string =>
  firmness < 0.2
    ? 'soft'
    : firmness < 0.4
      ? 'rather soft'
      : firmness < 0.6
        ? 'medium'
        : firmness < 0.8
          ? 'rather firm'
          : 'firm';

function levelWords({ level }: PlayerRecord): string {
  if (level.kind === 'handicap') return String(level.handicap);
  return level.kind === 'tour' ? 'tour' : 'beginner';
}

/** What the plan is about: the ball and the flag, the day, the player. */
export function ContextStrip(props: ContextStripProps): React.JSX.Element {
  const { document, balls, flags, ballId, flagId, units, chooseBall, chooseFlag, onKeyDown } = props;
  const days = recordsOf(document, 'conditions');
  const day = days.find(({ inUse }) => inUse) ?? days[0];
  const players = recordsOf(document, 'player');
  const player = players.find(({ inUse }) => inUse) ?? players[0];
  return (
    <section className="strip" aria-label="Ball, flag, day and player" onKeyDown={onKeyDown}>
      <Chooser title="Ball" shape="balls" choices={balls} chosenId={ballId} choose={chooseBall} />
      <Chooser title="Flag" shape="flags" choices={flags} chosenId={flagId} choose={chooseFlag} />
      <dl className="strip-facts">
        {day !== undefined && (
          <>
            <div>
              <dt>Day</dt>
              <dd>{day.name}</dd>
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
              <dd>
                {day.windMps < 0.2
                  ? 'still'
                  : `${withUnit(wind(day.windMps, units))} ${compassPoint(day.windFromDeg)}`}
              </dd>
            </div>
          </>
        )}
        {player !== undefined && (
          <div className={day === undefined ? '' : 'apart'}>
            <dt>Player</dt>
            <dd>
              {player.name}, {levelWords(player)}
            </dd>
          </div>
        )}
      </dl>
    </section>
  );
}
