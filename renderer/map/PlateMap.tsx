import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { byLabel } from '../../shared/atlas/byLabel.ts';
import { headerOf } from '../../shared/atlas/document.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { LonLat, PlanePoint } from '../../shared/geometry/points.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import { element } from '../../shared/plate/element.ts';
import { frameMargin } from '../../shared/plate/frame.ts';
import type { SurroundsLayer } from '../../shared/plate/surroundsClasses.ts';
import type { ReliefDrawing } from '../../shared/plate/relief.ts';
import type { DrawnShot } from '../../shared/plate/shotMark.ts';
import { screenStyle } from '../../shared/plate/style.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import { playBearing } from '../../shared/playbook/placeWords.ts';
import type { PlateView } from '../../shared/plate/view.ts';
import { metresFromYards } from '../../shared/units/conversions.ts';
import { size } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { Drawing } from '../ui/drawing.tsx';
import { holeWords } from '../ui/words.ts';
import type { Handle } from './handles.ts';
import './map.css';
import { drawOver, drawUnder, type MapDrawing } from './mapDrawing.ts';
import { drawSurround, footPx } from './plateSurround.ts';
import { Stage } from './stage.ts';
import { usePlateSize } from './usePlateSize.ts';

interface PlateMapProps {
  readonly scene: Scene;
  /** Slopes and heights of its ground; null while they are being drawn up. */
  readonly relief: ReliefDrawing | null;
  readonly document: AtlasDocument;
  readonly ballId: string | null;
  readonly flagId: string | null;
  readonly shots: readonly DrawnShot[];
  /** Something is held and moves: the ground below is left as it is until it is let go. */
  readonly moving: boolean;
  /** An answer is on its way, and is to be drawn before the map moves to what it is about. */
  readonly awaited?: boolean;
  readonly units: UnitsPreference;
  readonly largeType: boolean;
  readonly editable: boolean;
  readonly choose: (id: string, kind: 'ball' | 'flag') => void;
  readonly hold: (id: string, at: LonLat) => void;
  readonly drop: (id: string, at: LonLat) => void;
  /** A landing spot to be moved by hand; null for none. */
  readonly landing?: PlanePoint | null;
  readonly moveLanding?: (at: PlanePoint, done: boolean) => void;
  /** Drawn over the ground and under the balls, such as the map of the surrounds. */
  readonly layer?: SurroundsLayer | null;
  /** Where balls are likely to stop, flat pairs of metres. */
  readonly likely?: Float64Array;
  readonly approach?: MapDrawing['approach'];
  /** Where one more height would help most. */
  readonly measureHere?: readonly PlanePoint[];
  /** Given while the next click on the ground puts something there. */
  readonly place?: ((at: LonLat) => void) | undefined;
  /** Gets what zooms and fits the map, for buttons outside the plate: nothing of ours lies over the ground. */
  readonly onControls: (controls: MapControls | null) => void;
}

export interface MapControls {
  zoom(by: number): void;
  showGreen(): void;
  /** The place in the middle of the map. */
  middle(): LonLat;
  /** The plate as it is seen, as one drawing. */
  picture(): SvgNode | null;
  /** Tells the place under the pointer, null when it leaves the map. Returns how to stop. */
  watchPointer(tell: (at: PlanePoint | null) => void): () => void;
}

const ROOMY_PX = 620;
const LANDING = 'landing';
/** The ground gives way to new names and marks this long after they have come, ms. */
const CLEAR_AFTER_MS = 200;
/** The map moves this long after an answer that was awaited, so that the answer is seen first, and without one then, ms. */
const AFTER_ANSWER_MS = 50;
const WITHOUT_ANSWER_MS = 1000;
/** Choices that follow each other sooner than this come from a key held down, ms. */
const WALKING_MS = 200;
const noDots = new Float64Array(0);
const noSpots: readonly PlanePoint[] = [];

/** The plate of a hole: a map on a blank sheet in a graduated frame, its balls and flags to be taken hold of. */
export function PlateMap(props: PlateMapProps): React.JSX.Element {
  const { scene, relief, document, ballId, flagId, shots, moving, units, largeType, editable } = props;
  const { landing = null, layer = null, likely = noDots, approach = null, measureHere = noSpots } = props;
  const { awaited = false } = props;
  const holder = useRef<HTMLDivElement>(null);
  const plate = useRef<HTMLDivElement>(null);
  const [made, setMade] = useState<{ readonly stage: Stage; readonly anchor: string } | null>(null);
  const [view, setView] = useState<PlateView | null>(null);
  const style = useMemo(() => screenStyle('map', largeType ? 1.35 : 1), [largeType]);
  const { frame } = scene;
  const { placed } = headerOf(document);
  const anchor = frame.anchor.join(' ');
  // Once the anchor is another, nothing more is shown on the map of the old plane: it is taken away.
  const stage = made?.anchor === anchor ? made.stage : null;

  // The handlers change with every render; the map asks for the newest when something happens.
  const latest = useRef(props);
  useLayoutEffect(() => {
    latest.current = props;
  });

  const drawnUnder = useRef<{
    readonly stage: Stage;
    readonly style: typeof style;
    readonly drawing: MapDrawing;
  } | null>(null);
  const whole = useRef<() => SvgNode | null>(() => null);

  useLayoutEffect(() => {
    const element = holder.current;
    if (element === null) return undefined;
    const fresh = new Stage(element, latest.current.scene, {
      choose: (id) => {
        if (id !== LANDING) latest.current.choose(id, kindOf(latest.current.scene, id));
      },
      hold: (id, at) => {
        if (id !== LANDING) latest.current.hold(id, at);
        else latest.current.moveLanding?.(latest.current.scene.frame.toPlane(at), false);
      },
      drop: (id, at) => {
        if (id !== LANDING) latest.current.drop(id, at);
        else latest.current.moveLanding?.(latest.current.scene.frame.toPlane(at), true);
      },
      view: setView,
      click: (at) => latest.current.place?.(at),
    });
    setMade({ stage: fresh, anchor });
    latest.current.onControls({
      zoom: (by) => fresh.zoom(by),
      middle: () => fresh.middle(),
      picture: () => whole.current(),
      watchPointer: (tell) => fresh.watchPointer(tell),
      showGreen: () => fresh.fit(pointsToShow(latest.current, fresh.map.getSize().x)),
    });
    return () => {
      latest.current.onControls(null);
      fresh.remove();
      setMade(null);
    };
    // A new anchor is a new plane: the map starts afresh.
  }, [anchor]);

  const plateSize = usePlateSize(plate, stage?.map);

  const drawing = useMemo<MapDrawing>(
    () => ({
      areas: scene.input.areas,
      relief,
      marks: {
        balls: scene.balls.map(({ record, at }) => ({
          id: record.id,
          label: record.label,
          at,
          chosen: record.id === ballId,
        })),
        flags: scene.flags.map(({ record, at }) => ({
          id: record.id,
          label: record.label,
          at,
          chosen: record.id === flagId,
        })),
      },
      shots,
      layer,
      likely,
      approach,
      measureHere,
    }),
    [scene, relief, ballId, flagId, shots, layer, likely, approach, measureHere],
  );

  useEffect(() => {
    if (stage === null) return undefined;
    stage.over.show((at, visible) => drawOver(at, visible, style, drawing).node);
    if (moving) return undefined;
    const draw = (): void => {
      drawnUnder.current = { stage, style, drawing };
      stage.under.show((at, visible) =>
        drawUnder(at, style, drawing, drawOver(at, visible, style, drawing), visible),
      );
    };
    const last = drawnUnder.current;
    const sameGround =
      last !== null &&
      last.stage === stage &&
      last.style === style &&
      last.drawing.areas === drawing.areas &&
      last.drawing.relief === drawing.relief &&
      last.drawing.layer === drawing.layer;
    if (!sameGround) {
      draw();
      return undefined;
    }
    // Only what the ground keeps clear of has changed: that can wait until nothing else comes.
    const timer = setTimeout(draw, CLEAR_AFTER_MS);
    return () => clearTimeout(timer);
  }, [stage, style, drawing, moving]);

  useEffect(() => {
    if (stage === null) return;
    const stepM = units.system === 'yards' ? metresFromYards(0.25) : 0.25;
    stage.handles.show(
      [
        ...handlesOf(scene, ballId, flagId),
        ...(landing === null
          ? []
          : [{ id: LANDING, kind: 'landing' as const, name: 'Landing spot', at: landing, chosen: true }]),
      ],
      editable || landing !== null,
      stepM,
    );
  }, [stage, scene, ballId, flagId, units, editable, landing]);

  const holeId = scene.hole.id;
  useEffect(() => {
    stage?.fit(pointsToShow(latest.current, stage.map.getSize().x));
  }, [stage, holeId, plateSize?.mapWidth, plateSize?.mapHeight]);
  // To move the map draws all of it: that waits for the answer, and for whoever runs through the balls to stop.
  const chosenAt = useRef(-Infinity);
  const moveAfter = useRef<number | null>(null);
  useEffect(() => {
    const now = performance.now();
    moveAfter.current = now + (now - chosenAt.current < WALKING_MS ? WALKING_MS : 0);
    chosenAt.current = now;
  }, [stage, ballId, flagId]);
  const wasAwaited = useRef(false);
  useEffect(() => {
    const answered = wasAwaited.current && !awaited;
    wasAwaited.current = awaited;
    if (moveAfter.current === null) return undefined;
    const show = (): void => {
      moveAfter.current = null;
      stage?.keepInSight(pairPoints(latest.current), pointsToShow(latest.current, stage.map.getSize().x));
    };
    const waitMs = Math.max(
      moveAfter.current - performance.now(),
      awaited ? WITHOUT_ANSWER_MS : answered ? AFTER_ANSWER_MS : 0,
    );
    if (waitMs <= 0) {
      show();
      return undefined;
    }
    const timer = setTimeout(show, waitMs);
    return () => clearTimeout(timer);
  }, [stage, ballId, flagId, awaited]);

  const margin = frameMargin(style);
  const foot = footPx(largeType);
  const { green, hole } = scene;
  const playBearingDeg = hole.line === null ? undefined : playBearing(scene);
  const surround = useMemo<SvgNode | null>(() => {
    if (view === null || plateSize === null) return null;
    const outer = green.polygon[0] ?? [];
    const span = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
    const greenSize = size(
      span(outer.map(({ eastM }) => eastM)),
      span(outer.map(({ northM }) => northM)),
      units,
    );
    const { label, name } = hole;
    return drawSurround(view, plateSize, foot, style, {
      title: name === '' ? holeWords(label, '') : name,
      subtitle: `${holeWords(label, '')}, green ${greenSize}`,
      units,
      placed,
      ...(playBearingDeg !== undefined && { playBearingDeg }),
      slopeLegend: layer === null,
    });
  }, [view, plateSize, foot, style, units, placed, playBearingDeg, green, hole, layer]);

  useLayoutEffect(() => {
    whole.current = () => {
      if (view === null || surround === null) return null;
      const { width, height } = view.box;
      const over = drawOver(view, view.box, style, drawing);
      const map = element(
        'svg',
        { x: margin, y: margin, width, height, viewBox: `0 0 ${width} ${height}`, overflow: 'hidden' },
        drawUnder(view, style, drawing, over, view.box),
        over.node,
      );
      return { ...surround, children: [map, ...surround.children] };
    };
  });

  return (
    <section
      className={props.place === undefined ? 'plate' : 'plate placing'}
      aria-label={`Plate of hole ${scene.hole.label}`}
      ref={plate}
    >
      <div
        className="plate-map"
        ref={holder}
        style={{ inset: `${margin}px ${margin}px ${margin + foot}px ${margin}px` }}
      />
      <Drawing node={surround} className="plate-frame" />
    </section>
  );
}

const kindOf = (scene: Scene, id: string): 'ball' | 'flag' =>
  scene.balls.some(({ record }) => record.id === id) ? 'ball' : 'flag';

function handlesOf(scene: Scene, ballId: string | null, flagId: string | null): readonly Handle[] {
  const handles = (
    kind: 'ball' | 'flag',
    places: Scene['balls'] | Scene['flags'],
    chosenId: string | null,
  ): readonly Handle[] =>
    places
      .map(({ record, at }) => ({ record, at }))
      .sort((a, b) => byLabel(a.record, b.record))
      .map(({ record: { id, label, name }, at }) => ({
        id,
        kind,
        name: `${kind === 'ball' ? 'Ball' : 'Flag'} ${label}${name === '' ? '' : `, ${name}`}`,
        at,
        chosen: id === chosenId,
      }));
  return [...handles('ball', scene.balls, ballId), ...handles('flag', scene.flags, flagId)];
}

/** Chosen ball and flag with some ground around them. */
function pairPoints({ scene, ballId, flagId }: PlateMapProps): readonly PlanePoint[] {
  const ball = scene.balls.find(({ record }) => record.id === ballId);
  const flag = scene.flags.find(({ record }) => record.id === flagId);
  return [...(ball === undefined ? [] : [ball.at]), ...(flag === undefined ? [] : [flag.at])];
}

/** The green with the chosen ball and flag, and where there is room the other balls near it. */
function pointsToShow(props: PlateMapProps, widthPx: number): readonly PlanePoint[] {
  const { scene } = props;
  const outer = scene.green.polygon[0] ?? [];
  const balls = scene.balls.map(({ at }) => at);
  const near = widthPx < ROOMY_PX ? [] : balls.filter((at) => withinM(at, outer) < 16);
  return [...outer, ...near, ...pairPoints(props)];
}

function withinM(at: PlanePoint, ring: readonly PlanePoint[]): number {
  return Math.min(
    ...ring.map(({ eastM, northM }) => Math.hypot(at.eastM - eastM, at.northM - northM)),
    Infinity,
  );
}
