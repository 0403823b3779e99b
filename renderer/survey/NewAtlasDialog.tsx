import { useState } from 'react';
import type { AtlasHeader } from '../../shared/atlas/records.ts';
import { type LonLat, lonLat } from '../../shared/geometry/points.ts';
import { parseDegrees } from '../../shared/units/parse.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import type { NewAtlas } from '../store/newAtlas.ts';
import { preferencesStore } from '../store/preferences.ts';
import { Dialog } from '../ui/Dialog.tsx';

interface NewAtlasDialogProps {
  readonly close: () => void;
  readonly start: (asked: NewAtlas) => void;
}

/** What a new atlas is of, where it lies, and what it is measured in. */
export function NewAtlasDialog({ close, start }: NewAtlasDialogProps): React.JSX.Element {
  const [name, setName] = useState('');
  const [kind, setKind] = useState<AtlasHeader['kind']>('course');
  const [onEarth, setOnEarth] = useState(false);
  const [lat, setLat] = useState('');
  const [lon, setLon] = useState('');
  const [units, setUnits] = useState(preferencesStore.getState().units);
  const [trouble, setTrouble] = useState<string | null>(null);
  const create = (): void => {
    try {
      const at = onEarth ? positionTyped(lat, lon) : null;
      preferencesStore.setState({ units });
      start({ name: name.trim() === '' ? 'New atlas' : name.trim(), kind, at });
      close();
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      setTrouble(error.message);
    }
  };
  const choice = (
    group: string,
    value: string,
    chosen: boolean,
    set: () => void,
    words: string,
  ): React.JSX.Element => (
    <label className="choice" key={value}>
      <input type="radio" name={group} checked={chosen} onChange={set} /> {words}
    </label>
  );
  return (
    <Dialog title="New atlas" close={close}>
      <form
        className="dialog-form"
        onSubmit={(event) => {
          event.preventDefault();
          create();
        }}
      >
        <div className="field">
          <label htmlFor="new-name">Name</label>
          <input
            id="new-name"
            type="text"
            maxLength={200}
            value={name}
            onChange={({ target }) => setName(target.value)}
          />
        </div>
        <fieldset>
          <legend>What it is of</legend>
          {choice('kind', 'course', kind === 'course', () => setKind('course'), 'A course, hole by hole')}
          {choice(
            'kind',
            'practiceGround',
            kind === 'practiceGround',
            () => setKind('practiceGround'),
            'A practice ground, station by station',
          )}
        </fieldset>
        <fieldset>
          <legend>Where it lies</legend>
          {choice(
            'where',
            'blank',
            !onEarth,
            () => setOnEarth(false),
            'A blank canvas, placed on the earth later or never',
          )}
          {choice('where', 'earth', onEarth, () => setOnEarth(true), 'A place on the earth')}
          {onEarth && (
            <>
              <div className="field">
                <label htmlFor="new-lat">Latitude</label>
                <input
                  id="new-lat"
                  type="text"
                  value={lat}
                  placeholder="51.4779"
                  onChange={({ target }) => setLat(target.value)}
                />
              </div>
              <div className="field">
                <label htmlFor="new-lon">Longitude</label>
                <input
                  id="new-lon"
                  type="text"
                  value={lon}
                  placeholder="-0.0015"
                  onChange={({ target }) => setLon(target.value)}
                />
              </div>
            </>
          )}
        </fieldset>
        <fieldset>
          <legend>Measured in</legend>
          {choice('units', 'yards', units === 'yards', () => setUnits('yards'), 'Yards, feet and paces')}
          {choice('units', 'metres', units === 'metres', () => setUnits('metres'), 'Metres and paces')}
        </fieldset>
        {trouble !== null && (
          <p className="field-trouble" role="alert">
            {trouble}
          </p>
        )}
        <div className="dialog-actions">
          <button type="submit" className="button filled">
            Begin
          </button>
          <button type="button" className="link-button" onClick={close}>
            Cancel
          </button>
        </div>
      </form>
    </Dialog>
  );
}

/** A typed latitude and longitude in degrees; throws InputProblem for what is no place, or too near a pole to map. */
export function positionTyped(lat: string, lon: string): LonLat {
  const latDeg = parseDegrees(lat, 'Latitude');
  const lonDeg = parseDegrees(lon, 'Longitude');
  if (Math.abs(latDeg) > 85)
    throw new InputProblem(
      'bad-latitude',
      'It lies beyond 85 degrees.',
      'Latitude',
      'North is above nothing, south below; such as 51.4779.',
    );
  if (Math.abs(lonDeg) > 180)
    throw new InputProblem(
      'bad-longitude',
      'It lies beyond 180 degrees.',
      'Longitude',
      'East is above nothing, west below; such as -0.0015.',
    );
  return lonLat(lonDeg, latDeg);
}
