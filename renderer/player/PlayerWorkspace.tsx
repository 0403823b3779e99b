import { ChevronDown, Plus, Trash2 } from 'lucide-react';
import { useEffect, useRef, useState } from 'react';
import { inUseOf, recordsOf } from '../../shared/atlas/document.ts';
import { type Edit, putRecords, removeRecords, useRecord as recordInUse } from '../../shared/atlas/edits.ts';
import type { AtlasDocument, PlayerRecord } from '../../shared/atlas/records.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { firstPlayer } from '../store/newAtlas.ts';
import type { PlayersOfAtlas } from '../store/playersElsewhere.ts';
import { Menu } from '../ui/Menu.tsx';
import { Bag } from './Bag.tsx';
import { focusText } from './focusText.ts';
import { PlayerForm } from './PlayerForm.tsx';
import { levelWords } from './levelWords.ts';
import './player.css';
import { Repertoire } from './Repertoire.tsx';

interface PlayerWorkspaceProps {
  readonly document: AtlasDocument;
  readonly units: UnitsPreference;
  readonly readOnly: boolean;
  readonly edit: (edit: Edit) => void;
  /** Whoever plays in the other atlases of the library. */
  readonly elsewhere: () => Promise<readonly PlayersOfAtlas[]>;
}

/** Who plays: bag, level, hand, paces, and which shots are theirs. */
export function PlayerWorkspace({
  document,
  units,
  readOnly,
  edit,
  elsewhere,
}: PlayerWorkspaceProps): React.JSX.Element {
  const players = recordsOf(document, 'player');
  const inUse = inUseOf(document, 'player');
  const [shownId, setShown] = useState<string | null>(null);
  const player = players.find(({ id }) => id === shownId) ?? inUse;
  const put = (annotation: string, changed: Partial<PlayerRecord>): void => {
    if (player !== undefined) edit(putRecords(annotation, [{ ...player, ...changed }]));
  };
  const [others, setOthers] = useState<readonly PlayersOfAtlas[]>([]);
  useEffect(() => {
    let wanted = true;
    void elsewhere().then((found) => {
      if (wanted) setOthers(found);
    });
    return () => {
      wanted = false;
    };
  }, [elsewhere]);
  const bringIn = (one: PlayerRecord, atlasName: string): void => {
    const id = crypto.randomUUID();
    edit(
      putRecords(`brought ${one.name} in from ${atlasName}`, [{ ...one, id, inUse: players.length === 0 }]),
    );
    setShown(id);
  };
  const add = (): void => {
    const id = crypto.randomUUID();
    const like = player ?? firstPlayer;
    edit(
      putRecords('added a player', [
        {
          ...like,
          id,
          name: nextName(players),
          inUse: players.length === 0,
          bag: like.bag.map((club) => ({ ...club })),
        },
      ]),
    );
    setShown(id);
    toName.current = id;
  };
  // Whoever was just added is given a name first.
  const toName = useRef<string | null>(null);
  const side = useRef<HTMLElement>(null);
  useEffect(() => {
    if (toName.current === null || toName.current !== player?.id) return;
    toName.current = null;
    focusText(side.current);
  });

  return (
    <div className="player">
      <h1 className="unseen">Players</h1>
      <section className="player-list" aria-label="Players">
        <div className="side-head">
          <h2>Players</h2>
          {!readOnly && (
            <button type="button" className="button" onClick={add}>
              <Plus size={17} strokeWidth={1.9} aria-hidden /> Add a player
            </button>
          )}
        </div>
        {!readOnly && others.length > 0 && (
          <Menu
            className="button"
            groups={others.map(({ atlasId, atlasName, players: theirs }) => ({
              title: atlasName,
              items: theirs.map((one) => ({
                key: `${atlasId} ${one.id}`,
                label: one.name,
                hint: levelWords(one.level),
                run: () => bringIn(one, atlasName),
              })),
            }))}
            button={
              <>
                From another atlas <ChevronDown size={14} strokeWidth={1.9} aria-hidden />
              </>
            }
          />
        )}
        <ul>
          {players.map((one) => (
            <li key={one.id} className={one.id === player?.id ? 'chosen' : ''}>
              <button type="button" aria-pressed={one.id === player?.id} onClick={() => setShown(one.id)}>
                <strong>{one.name}</strong>
                <span className="under">
                  {levelWords(one.level)}
                  {one.handed === 'left' ? ', left-handed' : ''}
                  {one.id === inUse?.id ? ', plans are made for this player' : ''}
                </span>
              </button>
            </li>
          ))}
        </ul>
        {player !== undefined && !readOnly && (
          <div className="player-actions">
            {player.id !== inUse?.id && (
              <button
                type="button"
                className="button filled"
                onClick={() => edit(recordInUse(`planned for ${player.name}`, 'player', player.id))}
              >
                Plan for {player.name}
              </button>
            )}
            {players.length > 1 && player.id !== inUse?.id && (
              <button
                type="button"
                className="button"
                onClick={() => edit(removeRecords(`took ${player.name} away`, [player.id]))}
              >
                <Trash2 size={16} strokeWidth={1.9} aria-hidden /> Take away
              </button>
            )}
          </div>
        )}
      </section>
      {player !== undefined && (
        <>
          <section className="player-bag" aria-label={`Bag of ${player.name}`}>
            <Bag key={player.id} player={player} units={units} readOnly={readOnly} put={put} />
          </section>
          <section className="player-side" aria-label={player.name} ref={side}>
            <PlayerForm key={player.id} player={player} units={units} readOnly={readOnly} put={put} />
            <Repertoire player={player} readOnly={readOnly} put={put} />
          </section>
        </>
      )}
    </div>
  );
}

function nextName(players: readonly PlayerRecord[]): string {
  const taken = new Set(players.map(({ name }) => name));
  for (let count = players.length + 1; ; count += 1)
    if (!taken.has(`Player ${count}`)) return `Player ${count}`;
}
