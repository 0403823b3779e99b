import { useEffect, useState } from 'react';
import { byLabel } from '../../shared/atlas/byLabel.ts';
import { headerOf, holesInOrder, recordsOf } from '../../shared/atlas/document.ts';
import type { AtlasDocument, HoleRecord } from '../../shared/atlas/records.ts';
import type { FileToKeep } from '../../shared/exchange/oneFile.ts';
import {
  type ExportFormat,
  exportFormats,
  type ExportRequest,
  needsHole,
  needsPlace,
  USUAL_CELL_M,
} from '../../shared/exchange/sendOut.ts';
import { openDialog } from '../store/dialogs.ts';
import { contourStepsM, contourStepWords, USUAL_CONTOUR_STEP } from '../../shared/plate/contourSteps.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { Dialog } from '../ui/Dialog.tsx';
import { Trouble, type TroubleWords } from '../ui/Trouble.tsx';
import { holeWords } from '../ui/words.ts';
import { FormatsClient } from '../workers/formatsClient.ts';
import { fileNameFrom } from '../store/fileNameFrom.ts';
import './bringin.css';

interface SendOutDialogProps {
  readonly document: AtlasDocument;
  readonly holeId: string | null;
  readonly units: UnitsPreference;
  readonly keep: (file: FileToKeep) => Promise<boolean>;
  readonly close: () => void;
}

const words: Readonly<Record<ExportFormat, readonly [name: string, what: string]>> = {
  geojson: ['GeoJSON', 'areas, lines, holes, flags, balls and spot heights'],
  kml: ['KML', 'the same, in folders by kind'],
  gpx: ['GPX', 'flags and balls as waypoints, to find them on the ground'],
  csv: ['CSV of the evidence', 'heights and slopes with their accuracy'],
  plan: ['CSV of a plan', 'every option of one ball to one flag'],
  asc: ['ASCII grid', 'heights of the fitted ground, with its .prj'],
  tif: ['GeoTIFF', 'heights of the fitted ground, 32-bit'],
  contours: ['Contours', 'lines of equal height as GeoJSON'],
};

type Made =
  | { readonly at: 'making'; readonly share: number }
  | { readonly at: 'made'; readonly file: FileToKeep }
  | { readonly at: 'failed'; readonly trouble: TroubleWords };

/** The atlas, its evidence, a plan or the fitted ground in an open format: made at once, kept where the person says. */
export function SendOutDialog({
  document,
  holeId,
  units,
  keep,
  close,
}: SendOutDialogProps): React.JSX.Element {
  const holes = holesInOrder(document);
  const { placed, name } = headerOf(document);
  const [to, setTo] = useState<ExportFormat>(placed ? 'geojson' : 'csv');
  const [onlyHole, setOnlyHole] = useState<string | null>(null);
  const [ballId, setBallId] = useState('');
  const [flagId, setFlagId] = useState('');
  const [withGrids, setWithGrids] = useState(false);
  const [contourStep, setContourStep] = useState(USUAL_CONTOUR_STEP);
  const contourSteps = contourStepsM(units);
  const intervalM = contourSteps[contourStep];
  const hole = holes.find(({ id }) => id === (onlyHole ?? (needsHole.has(to) ? holeId : null)));
  const balls = placesOf(document, 'ballPosition', hole);
  const flags = placesOf(document, 'holeLocation', hole);
  const ball = balls.find(({ id }) => id === ballId) ?? balls[0];
  const flag = flags.find(({ id }) => id === flagId) ?? flags[0];
  const grids = recordsOf(document, 'elevationGrid').length > 0;
  const request: ExportRequest = {
    to,
    holeId: to === 'csv' ? null : (hole?.id ?? null),
    ...(to === 'plan' && ball !== undefined && flag !== undefined && { ballId: ball.id, flagId: flag.id }),
    ...(to === 'csv' && { withGrids }),
    ...(to === 'contours' && intervalM !== undefined && { intervalM }),
  };
  const parts = [name, ...(request.holeId === null || hole === undefined ? [] : [`hole ${hole.label}`])];
  if (to === 'plan') parts.push(`ball ${ball?.label ?? ''} flag ${flag?.label ?? ''}`);
  const stem = fileNameFrom(parts.join(' '));
  const made = useMade(document, request, stem);
  return (
    <Dialog title="Send out" close={close}>
      <form
        className="dialog-form"
        onSubmit={(event) => {
          event.preventDefault();
          if (made.at !== 'made') return;
          void keep(made.file).then((kept) => {
            if (kept) close();
          });
        }}
      >
        <fieldset className="sendout-formats">
          <legend>As</legend>
          {exportFormats.map((one) => (
            <label key={one} className="choice">
              <input type="radio" name="send-out" checked={to === one} onChange={() => setTo(one)} />
              <span>
                <strong>{words[one][0]}</strong> <span className="hint">{words[one][1]}</span>
              </span>
            </label>
          ))}
        </fieldset>
        <div className="bringin-fields">
          {to !== 'csv' && (
            <label>
              <span>Of</span>
              <select
                value={hole?.id ?? ''}
                onChange={({ target }) => setOnlyHole(target.value === '' ? null : target.value)}
              >
                {!needsHole.has(to) && <option value="">everything</option>}
                {holes.map(({ id, label, name: called }) => (
                  <option key={id} value={id}>
                    {holeWords(label, called)}
                  </option>
                ))}
              </select>
            </label>
          )}
          {to === 'plan' && (
            <>
              <label>
                <span>Ball</span>
                <select value={ball?.id ?? ''} onChange={({ target }) => setBallId(target.value)}>
                  {balls.map(({ id, label }) => (
                    <option key={id} value={id}>
                      {label}
                    </option>
                  ))}
                </select>
              </label>
              <label>
                <span>Flag</span>
                <select value={flag?.id ?? ''} onChange={({ target }) => setFlagId(target.value)}>
                  {flags.map(({ id, label }) => (
                    <option key={id} value={id}>
                      {label}
                    </option>
                  ))}
                </select>
              </label>
            </>
          )}
          {to === 'csv' && grids && (
            <label className="choice">
              <input
                type="checkbox"
                checked={withGrids}
                onChange={({ target }) => setWithGrids(target.checked)}
              />{' '}
              With every height of the elevation grids
            </label>
          )}
          {(to === 'asc' || to === 'tif') && (
            <p className="hint">A height every {USUAL_CELL_M} m, in the UTM zone of the course on WGS 84.</p>
          )}
          {to === 'contours' && (
            <label>
              <span>Contours every</span>
              <select value={contourStep} onChange={({ target }) => setContourStep(Number(target.value))}>
                {contourSteps.map((stepM, step) => (
                  <option key={step} value={step}>
                    {contourStepWords(stepM, units)}
                  </option>
                ))}
              </select>
            </label>
          )}
        </div>
        <div className="sendout-made" aria-live="polite">
          {made.at === 'failed' ? (
            <>
              <Trouble trouble={made.trouble} />
              {!placed && needsPlace.has(to) && (
                <button type="button" className="link-button" onClick={() => openDialog('place')}>
                  Place it on the earth
                </button>
              )}
            </>
          ) : made.at === 'making' ? (
            <label>
              Making it <progress max={1} value={made.share} />
            </label>
          ) : (
            <p>
              <strong>{made.file.fileName}</strong>, {sizeWords(made.file.content.length)}: {made.file.holds}
            </p>
          )}
        </div>
        <div className="dialog-actions">
          <button type="submit" className="button filled" disabled={made.at !== 'made'}>
            Save it
          </button>
          <button type="button" className="link-button" onClick={close}>
            Cancel
          </button>
        </div>
      </form>
    </Dialog>
  );
}

/** The file of a request, made off the main thread; a request that has changed ends the work on the one before. */
function useMade(document: AtlasDocument, request: ExportRequest, stem: string): Made {
  const [client] = useState(() => new FormatsClient());
  const asked = JSON.stringify(request);
  const [made, setMade] = useState<{ readonly of: string; readonly state: Made }>({
    of: '',
    state: { at: 'making', share: 0 },
  });
  useEffect(() => {
    const tell = (state: Made): void => setMade({ of: asked, state });
    // What was asked, read back: the same plain data, and the effect depends on nothing that is made anew.
    const question = JSON.parse(asked) as ExportRequest;
    client.ask(
      { kind: 'sendOut', document, request: question, stem },
      {
        progress: (share) => tell({ at: 'making', share }),
        answer: (answer) =>
          tell(
            answer.kind === 'sendOut'
              ? { at: 'made', file: answer.file }
              : { at: 'failed', trouble: answer.problem },
          ),
        stopped: (problem) => tell({ at: 'failed', trouble: problem }),
      },
    );
  }, [client, document, asked, stem]);
  useEffect(() => () => client.close(), [client]);
  return made.of === asked ? made.state : { at: 'making', share: 0 };
}

const placesOf = (
  document: AtlasDocument,
  type: 'ballPosition' | 'holeLocation',
  hole: HoleRecord | undefined,
) =>
  recordsOf(document, type)
    .filter((place) => place.holeId === hole?.id)
    .toSorted(byLabel);

const sizeWords = (bytes: number): string =>
  bytes < 1024 * 1024 ? `${String(Math.ceil(bytes / 1024))} kB` : `${(bytes / 1048576).toFixed(1)} MB`;
