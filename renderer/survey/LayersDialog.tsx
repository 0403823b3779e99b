import { useState } from 'react';
import { useStore } from 'zustand';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { type BaseLayerSetting, isLayerAddress, openStreetMap } from '../store/baseLayerSettings.ts';
import { openDialog } from '../store/dialogs.ts';
import { preferencesStore } from '../store/preferences.ts';
import { Dialog } from '../ui/Dialog.tsx';
import { Field } from './Field.tsx';
import { numberTyped } from './numberTyped.ts';
import { placing } from './placing/placingHand.ts';
import { trimmed } from './words.ts';

interface LayersDialogProps {
  readonly placed: boolean;
  readonly close: () => void;
  /** Names the owner of the pictures in the atlas, for whatever is printed of what is traced over them. */
  readonly credit: (layer: BaseLayerSetting) => void;
  /** Lets a layer be moved to where it fits, by hand. */
  readonly shift: (layer: BaseLayerSetting) => void;
  /** The pictures of the atlas. */
  readonly children: React.ReactNode;
}

/** What lies under the drawing: a grid, and pictures of the ground from any address, off until switched on. */
export function LayersDialog(props: LayersDialogProps): React.JSX.Element {
  const { close, credit, shift, children } = props;
  // Being set down over a map, it needs one.
  const settingDown = useStore(placing.store, ({ subject }) => subject?.kind === 'sheet');
  const placed = props.placed || settingDown;
  const { baseLayers, grid } = useStore(preferencesStore);
  const [opened, setOpened] = useState<string | null>(null);
  const change = (id: string, changed: Partial<BaseLayerSetting>): void =>
    preferencesStore.setState({
      baseLayers: preferencesStore
        .getState()
        .baseLayers.map((layer) => (layer.id === id ? { ...layer, ...changed } : layer)),
    });
  return (
    <Dialog title="Under the drawing" close={close}>
      <label className="choice">
        <input
          type="checkbox"
          checked={grid}
          onChange={({ target }) => preferencesStore.setState({ grid: target.checked })}
        />
        A grid of a yard or metre
      </label>
      {children}
      <h3>Maps from elsewhere</h3>
      {!placed && (
        <p className="dialog-note">
          This atlas is not placed on the earth yet, so no map can lie under it.{' '}
          <button type="button" className="link-button" onClick={() => openDialog('place')}>
            Place it
          </button>
        </p>
      )}
      <ul className="shelf layers">
        {baseLayers.map((layer) => (
          <li key={layer.id}>
            <div className="layer-head">
              <label className="choice">
                <input
                  type="checkbox"
                  checked={layer.on}
                  disabled={!placed}
                  onChange={({ target }) => {
                    change(layer.id, { on: target.checked });
                    if (target.checked) credit(layer);
                  }}
                />
                <strong>{layer.name}</strong>
              </label>
              <button
                type="button"
                className="link-button"
                aria-expanded={opened === layer.id}
                onClick={() => setOpened(opened === layer.id ? null : layer.id)}
              >
                Settings
              </button>
            </div>
            {opened === layer.id && (
              <LayerFields
                layer={layer}
                shift={placed && layer.on ? () => shift(layer) : null}
                change={(changed) => change(layer.id, changed)}
                remove={() =>
                  preferencesStore.setState({ baseLayers: baseLayers.filter(({ id }) => id !== layer.id) })
                }
              />
            )}
          </li>
        ))}
      </ul>
      <div className="dialog-actions">
        <button
          type="button"
          className="button"
          onClick={() => {
            const id = crypto.randomUUID();
            const added: BaseLayerSetting = {
              ...openStreetMap,
              id,
              name: 'Another source',
              url: 'https://tiles.example.org/{z}/{x}/{y}.png',
              attribution: '',
            };
            preferencesStore.setState({ baseLayers: [...baseLayers, added] });
            setOpened(id);
          }}
        >
          Add a source
        </button>
      </div>
      <p className="hint">
        Nothing is asked of a source while it is off, and only what is in view while it is on. Whoever runs it
        sees which ground you look at. Keep to its terms, and name it as it asks.
      </p>
    </Dialog>
  );
}

interface LayerFieldsProps {
  readonly layer: BaseLayerSetting;
  /** Null while it is not seen. */
  readonly shift: (() => void) | null;
  readonly change: (changed: Partial<BaseLayerSetting>) => void;
  readonly remove: () => void;
}

function LayerFields({ layer, shift, change, remove }: LayerFieldsProps): React.JSX.Element {
  const address = (url: string, wmsLayers: string): Partial<BaseLayerSetting> => {
    if (!isLayerAddress(url, wmsLayers !== ''))
      throw new InputProblem(
        'bad-layer-address',
        'No pictures can come from that address.',
        'Address',
        'Give one that begins with https:// and has {z}, {x} and {y} in it, or that of a WMS with its layers below.',
      );
    return { url, wmsLayers };
  };
  return (
    <div className="layer-fields">
      <Field label="Name" value={layer.name} commit={(name) => change({ name })} />
      <Field label="Address" value={layer.url} commit={(url) => change(address(url, layer.wmsLayers))} />
      <Field label="WMS layers" value={layer.wmsLayers} commit={(wmsLayers) => change({ wmsLayers })} />
      <Field
        label="Attribution"
        value={layer.attribution}
        commit={(attribution) => change({ attribution })}
      />
      <Field
        label="Finest zoom"
        value={String(layer.maxNativeZoom)}
        commit={(typed) => change({ maxNativeZoom: Math.round(numberTyped(typed, 'Finest zoom', 1, 25)) })}
      />
      <Field
        label="Opacity"
        unit="%"
        value={String(Math.round(layer.opacity * 100))}
        commit={(typed) => change({ opacity: numberTyped(typed, 'Opacity', 0, 100) / 100 })}
      />
      <Field
        label="Shift east"
        unit="m"
        value={trimmed(layer.eastM, 2)}
        commit={(typed) => change({ eastM: numberTyped(typed, 'Shift east', -500, 500) })}
      />
      <Field
        label="Shift north"
        unit="m"
        value={trimmed(layer.northM, 2)}
        commit={(typed) => change({ northM: numberTyped(typed, 'Shift north', -500, 500) })}
      />
      <div className="held-actions">
        {shift !== null && (
          <button type="button" className="link-button" onClick={shift}>
            Shift it by hand
          </button>
        )}
        {layer.id === openStreetMap.id ? (
          <button
            type="button"
            className="link-button"
            onClick={() => change({ ...openStreetMap, on: layer.on })}
          >
            As it was at first
          </button>
        ) : (
          <button type="button" className="link-button" onClick={remove}>
            Take it away
          </button>
        )}
      </div>
    </div>
  );
}
