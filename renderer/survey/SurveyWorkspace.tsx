import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { findRecord, frameOf, headerOf, recordsOf } from '../../shared/atlas/document.ts';
import type { Edit } from '../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { distanceM } from '../../shared/geometry/ring.ts';
import { contourStepsM, contourStepWords, usualContourM } from '../../shared/plate/contourSteps.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { MapButtons } from '../map/MapButtons.tsx';
import { type SurveyControls, SurveyMap } from '../map/SurveyMap.tsx';
import { openDialog } from '../store/dialogs.ts';
import { pictureBroke } from '../store/pictureFiles.ts';
import { measureSpots } from '../store/measureSpots.ts';
import { preferencesStore } from '../store/preferences.ts';
import { holeWords } from '../ui/words.ts';
import { Trouble } from '../ui/Trouble.tsx';
import type { Hand } from './hand.ts';
import { DrawerButton } from './DrawerButton.tsx';
import { EmptySheet, EmptyStart } from './EmptyStart.tsx';
import { groundLook } from './groundLook.ts';
import { HandHints } from './HandHints.tsx';
import { HandPanel } from './HandPanel.tsx';
import { handDrawing, type PointedOut } from './handView.ts';
import { HeldPanel } from './HeldPanel.tsx';
import { doubtsOf, type LookAt } from './lookAt.ts';
import { MeasurePanel } from './MeasurePanel.tsx';
import { Measurements } from './Measurements.tsx';
import { areaShapes, hasThings, indexOf, isThing } from './planeShapes.ts';
import { placing } from './placing/placingHand.ts';
import { PlacingPanel } from './placing/PlacingPanel.tsx';
import { placingDrawing, withRoom } from './placing/placingView.ts';
import { shownLayers } from './placing/shownLayers.ts';
import { useLaidPictures } from './placing/useLaidPictures.ts';
import { useSheetShown } from './placing/useSheetShown.ts';
import { noStatus, surveyStatus } from './surveyStatus.ts';
import { homeOf, surveyDrawing } from './surveyView.ts';
import { ReadTheGround } from './ReadTheGround.tsx';
import { spotsToMeasure } from './spotsToMeasure.ts';
import './survey.css';
import { ToLookAt } from './ToLookAt.tsx';
import { ToolList } from './ToolList.tsx';
import { toolOf } from './tools.ts';
import { PointingPanel } from './PointingPanel.tsx';
import { pointing, pointingDrawing } from './pointingHand.ts';
import { useFindings } from './useFindings.ts';
import { useGround } from './useGround.ts';
import { useSurveyKeys } from './useSurveyKeys.ts';

interface SurveyWorkspaceProps {
  readonly hand: Hand;
  readonly openSample: () => void;
  readonly openFile: () => void;
  readonly document: AtlasDocument;
  readonly holeId: string | null;
  readonly units: UnitsPreference;
  readonly largeType: boolean;
  readonly narrow: boolean;
  readonly readOnly: boolean;
  readonly edit: (edit: Edit) => void;
}

/** Where ground is put on the sheet: tools, plate, and what is in hand. */
export function SurveyWorkspace(props: SurveyWorkspaceProps): React.JSX.Element {
  const { hand, document: own, holeId, units, largeType, narrow, readOnly, edit } = props;
  const placingNow = useStore(placing.store);
  const pointed = useStore(pointing.store);
  const document = useSheetShown(own, placingNow);
  const pictures = useLaidPictures(document, placingNow);
  const { baseLayers, grid } = useStore(preferencesStore);
  const [unreachable, setUnreachable] = useState<readonly string[]>([]);
  const state = useStore(hand.store);
  const [controls, setControls] = useState<SurveyControls | null>(null);
  const [shownId, setShownId] = useState<string | null>(null);
  const [drawer, setDrawer] = useState(false);
  const frame = frameOf(document);
  const header = headerOf(document);
  const hole = holeId === null ? undefined : findRecord(document, 'hole', holeId);

  useEffect(() => {
    if (controls === null) return undefined;
    hand.attach(() => ({
      document,
      holeId,
      units,
      readOnly,
      edit,
      newId: () => crypto.randomUUID(),
      middle: () => controls.middle(),
      metresPerPx: () => controls.metresPerPx(),
    }));
    return undefined;
  }, [hand, controls, document, holeId, units, readOnly, edit]);
  useEffect(() => {
    if (controls === null) return;
    placing.attach(() => ({
      document: own,
      units,
      edit,
      middle: () => controls.middle(),
      widthM: () => controls.widthM(),
    }));
    pointing.attach(() => ({ document: own, units, middle: () => controls.middle() }));
  }, [controls, own, units, edit]);
  useEffect(
    () => () => {
      pointing.finish();
      pointing.attach(null);
      placing.letGo();
      placing.attach(null);
    },
    [],
  );
  // The hand is empty when an atlas is opened, and lets go of what it has when the workspace closes.
  useEffect(() => {
    if (hand.state.purpose.kind === 'new') hand.hold(null);
    return () => hand.attach(null);
  }, [hand]);

  const planned = useStore(measureSpots);
  const choice = useStore(groundLook);
  const days = recordsOf(own, 'conditions');
  const stimpFt = (days.find(({ inUse }) => inUse) ?? days[0])?.stimpFt ?? USUAL_STIMP_FT;
  const look = useMemo(() => {
    const { contourStep, ...seen } = choice;
    return { ...seen, stimpFt, contourM: contourStepsM(units)[contourStep] ?? usualContourM(units) };
  }, [choice, stimpFt, units]);
  const { ground: fitted, trouble } = useGround(own, holeId, units, largeType, look);
  // It lies in the plane of the sheet, which is elsewhere while the sheet is being placed.
  const ground = document === own ? fitted : null;
  const findings = useFindings(own, units);
  const greens = useMemo(
    () =>
      areaShapes(document)
        .filter(({ record }) => record.kind === 'green')
        .map(({ polygon }) => polygon),
    [document],
  );
  const doubts = useMemo(
    () => [
      ...doubtsOf(ground, units),
      ...spotsToMeasure(document, holeId, planned, ground?.read.measureNext ?? [], greens),
    ],
    [document, holeId, planned, ground, greens, units],
  );
  const lookAt = useMemo(() => {
    const doubted = new Set(doubts.map(({ recordId }) => recordId).filter((id) => id !== null));
    return [
      ...findings.filter(
        ({ id, recordId }) => !(id.startsWith('height-disagrees') && doubted.has(recordId ?? '')),
      ),
      ...doubts,
    ];
  }, [findings, doubts]);
  const shown = lookAt.find(({ id }) => id === shownId) ?? null;
  const pointedOut = useMemo<PointedOut | null>(() => {
    const at = shown?.at ?? null;
    return shown === null || at === null ? null : { at, ink: shown.ink };
  }, [shown]);

  const show = (item: LookAt): void => {
    setShownId(item.id);
    if (item.at !== null) controls?.bringIn(item.at);
    const record = item.recordId === null ? undefined : document.records.get(item.recordId);
    hand.hold(isThing(record) ? record.id : null);
  };

  useEffect(() => {
    if (state.focus.on === 'plate' || placingNow.focus.on === 'plate') controls?.focus();
  }, [state.focus, placingNow.focus, controls]);
  useEffect(() => {
    if (pointed.turn > 0) controls?.focus();
  }, [pointed.turn, controls]);
  useEffect(() => {
    const cursor = pointed.cursor ?? placingNow.cursor ?? state.cursor;
    if (cursor !== null) controls?.bringIn(cursor);
  }, [state.cursor, placingNow.cursor, pointed.cursor, controls]);
  useSurveyKeys((key, pressed) => {
    if (pointed.index !== null) return pointing.key(key, pressed);
    if (placingNow.subject !== null) return placing.key(key, pressed);
    if (key.toLowerCase() !== 'n' || lookAt.length === 0) return hand.key(key, pressed);
    const next = lookAt[(lookAt.findIndex(({ id }) => id === shownId) + 1) % lookAt.length];
    if (next !== undefined) show(next);
    return true;
  });

  // Somebody comes from a plan to measure a spot.
  const { wanted } = planned;
  useEffect(() => {
    const item =
      wanted === null ? undefined : doubts.find(({ at }) => at !== null && distanceM(at, wanted) < 0.01);
    if (controls === null || item === undefined || item.at === null) return;
    const { at, id } = item;
    // Once the plate stands: it was laid out in this very frame.
    const frame = requestAnimationFrame(() => {
      controls.bringIn(at);
      controls.focus();
      setShownId(id);
      measureSpots.setState({ wanted: null });
    });
    return () => cancelAnimationFrame(frame);
  }, [wanted, doubts, controls]);

  const measureHere = useMemo(
    () => doubts.flatMap(({ ink, at }) => (ink === 'doubt' && at !== null ? [at] : [])),
    [doubts],
  );
  const { heldId } = state;
  const { placed } = header;
  const shifting = placingNow.subject?.kind === 'source' ? placingNow : null;
  const layers = useMemo(
    () => (placed ? shownLayers(baseLayers, shifting) : noLayers),
    [placed, baseLayers, shifting],
  );
  const held = heldId === null ? undefined : document.records.get(heldId);
  const chosenId = chosenPlace(document, heldId);
  const empty = useMemo(() => !hasThings(document), [document]);
  const bare = areaShapes(document).length === 0;
  const starting =
    empty &&
    pictures.length === 0 &&
    placingNow.subject === null &&
    state.tool === 'select' &&
    state.purpose.kind === 'new' &&
    !readOnly;
  const overPicture = layers.length > 0 || pictures.length > 0;
  const drawing = useMemo(
    () =>
      surveyDrawing(document, {
        holeId,
        heldId: chosenId,
        ground,
        units,
        grid: grid || (bare && !overPicture),
        overPicture,
        measureHere,
      }),
    [document, holeId, chosenId, ground, units, measureHere, grid, bare, overPicture],
  );
  const handShown = useMemo(
    () => handDrawing(state, document, units, ground?.heightAt ?? null, pointedOut, readOnly),
    [state, document, units, ground, pointedOut, readOnly],
  );
  const placingShown = useMemo(() => placingDrawing(placingNow, units), [placingNow, units]);
  const home = (): readonly PlanePoint[] =>
    document === own ? homeOf(document, holeId) : withRoom(homeOf(document, null));
  useEffect(() => {
    surveyStatus.setState({ pointer: state.cursor ?? state.pointer, ground, document, layers, unreachable });
  }, [state.cursor, state.pointer, ground, document, layers, unreachable]);
  useEffect(() => () => surveyStatus.setState(noStatus), []);

  const toTake = state.tool === 'several' && !isThing(held);
  const inHand =
    toTake || state.sketch !== null || state.waiting !== null || toolOf(state.tool).group !== 'hand';
  const heldPanel = isThing(held) ? (
    <HeldPanel key={held.id} {...{ hand, state, document, holeId, units, readOnly, edit }} thing={held} />
  ) : null;
  const justDrawn =
    heldPanel !== null && state.sketch === null && state.waiting === null && state.purpose.kind === 'new';
  const panel =
    pointed.index !== null ? (
      <PointingPanel hand={pointing} state={pointed} />
    ) : placingNow.subject !== null ? (
      <PlacingPanel hand={placing} state={placingNow} {...{ units, placed }} overMap={layers.length > 0} />
    ) : state.tool === 'measure' ? (
      <MeasurePanel state={state} ground={ground} units={units} />
    ) : inHand || state.purpose.kind !== 'new' ? (
      <>
        {justDrawn && heldPanel}
        <HandPanel hand={hand} state={state} units={units} next={justDrawn} />
      </>
    ) : (
      heldPanel
    );

  // Where the panel is a drawer, it comes out by itself as far as a value to be typed needs.
  const brief =
    pointed.index !== null ||
    placingNow.subject !== null ||
    state.waiting !== null ||
    (state.sketch !== null && (state.typed['side'] ?? '') !== '');
  const picturesSeen = recordsOf(document, 'picture').filter(({ id }) =>
    pictures.some((one) => one.id === id),
  );
  const title = hole === undefined ? header.name : hole.name === '' ? holeWords(hole.label, '') : hole.name;
  const mapButtons = controls !== null && !starting && (
    <MapButtons controls={{ zoom: (by) => controls.zoom(by), showGreen: () => controls.showAll() }} />
  );
  const subtitle =
    hole === undefined
      ? 'nothing traced yet'
      : `${hole.name === '' ? header.name : holeWords(hole.label, '')}${header.placed ? '' : ', not yet placed on the earth'}${ground === null || look.slopes ? '' : `, contours every ${contourStepWords(look.contourM * (largeType ? 2 : 1), units)}`}`;
  return (
    <div className={`survey${narrow ? ' narrow' : ''}${starting ? ' bare' : ''}`}>
      <h1 className="unseen">Survey of {title}</h1>
      <div className="survey-tools">
        {starting ? (
          <EmptyStart
            openSample={props.openSample}
            draw={() => hand.choose('green')}
            overPicture={() => openDialog('layers')}
            openFile={props.openFile}
          />
        ) : (
          <ToolList tool={state.tool} readOnly={readOnly} choose={(tool) => hand.choose(tool)} />
        )}
        {!narrow && mapButtons}
      </div>
      <div className="survey-middle">
        {trouble !== null && <Trouble trouble={trouble} />}
        <SurveyMap
          frame={frame}
          drawing={drawing}
          hand={
            pointed.index !== null
              ? pointingDrawing(pointed)
              : placingNow.subject === null
                ? handShown
                : placingShown
          }
          baseLayers={layers}
          pictures={pictures}
          home={home}
          homeKey={`${header.id} ${document === own ? (holeId ?? '') : 'all'}`}
          title={title}
          subtitle={subtitle}
          attribution={[...layers, ...picturesSeen]
            .map(({ attribution }) => attribution)
            .filter((text) => text !== '')
            .join(', ')}
          placed={header.placed}
          units={units}
          largeType={largeType}
          slopeLegend={look.slopes && ground !== null}
          pointer={state.tool === 'select' && pointed.index === null ? 'hold' : 'draw'}
          label={`Plate of ${title}. ${toolOf(state.tool).name} in hand.`}
          events={pointed.index !== null ? pointing : placingNow.subject === null ? hand : placing}
          onControls={setControls}
          onBaseTrouble={setUnreachable}
          onBrokenPicture={(id) => {
            const record = document.records.get(id);
            if (record?.type === 'picture') pictureBroke(record.sha256);
          }}
        >
          {starting && <EmptySheet />}
        </SurveyMap>
        {narrow && mapButtons}
        {narrow && inHand && placingNow.subject === null && pointed.index === null && (
          <div className="survey-hint">
            <HandHints state={state} units={units} short />
          </div>
        )}
      </div>
      <aside
        className={`survey-side${drawer ? ' open' : brief ? ' brief' : ''}`}
        aria-label="In hand and to look at"
      >
        {narrow && (
          <DrawerButton
            open={drawer}
            document={document}
            heldIds={heldId === null ? [] : [heldId, ...state.others]}
            findings={lookAt.length}
            toggle={() => setDrawer(!drawer)}
          />
        )}
        {panel}
        <Measurements
          heights={indexOf(document).of('spotHeight').length}
          slopes={indexOf(document).of('slopeReading').length}
          ground={ground}
          units={units}
        />
        {ground !== null && <ReadTheGround {...{ stimpFt, units, largeType }} />}
        <ToLookAt
          items={lookAt}
          shownId={shownId}
          readOnly={readOnly}
          show={show}
          mend={({ mend }) => {
            if (mend !== null) edit(mend);
          }}
        />
      </aside>
    </div>
  );
}

/** The flag or ball held, drawn otherwise while it is; all else that is held is the hand's own drawing. */
function chosenPlace(document: AtlasDocument, heldId: string | null): string | null {
  const held = heldId === null ? undefined : document.records.get(heldId);
  return held?.type === 'holeLocation' || held?.type === 'ballPosition' ? heldId : null;
}

const USUAL_STIMP_FT = 10;
/** The same empty list every time, so that the map is not told anew. */
const noLayers = [] as const;
