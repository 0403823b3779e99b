import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { LocalFrame } from '../../shared/geometry/localFrame.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { frameMargin } from '../../shared/plate/frame.ts';
import { screenStyle } from '../../shared/plate/style.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import type { Box, PlateView } from '../../shared/plate/view.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { Drawing } from '../ui/drawing.tsx';
import type { BaseLayer } from './baseLayers.ts';
import { drawHand, type HandDrawing } from './handDrawing.ts';
import './map.css';
import type { LaidPicture } from './pictureLayer.ts';
import { drawSurround, footPx } from './plateSurround.ts';
import { drawSurveyOver, drawSurveyUnder, type SurveyDrawing } from './surveyDrawing.ts';
import { SurveyStage, type SurveyStageEvents } from './surveyStage.ts';
import { usePlateSize } from './usePlateSize.ts';

export interface SurveyControls {
  zoom(by: number): void;
  showAll(): void;
  bringIn(at: PlanePoint): void;
  middle(): PlanePoint;
  /** How much ground is seen from side to side. */
  widthM(): number;
  metresPerPx(): number;
  focus(): void;
}

interface SurveyMapProps {
  readonly frame: LocalFrame;
  readonly drawing: SurveyDrawing;
  readonly hand: HandDrawing;
  readonly baseLayers: readonly BaseLayer[];
  readonly pictures: readonly LaidPicture[];
  /** What the map shows at first, and again when the whole is asked for. */
  readonly home: () => readonly PlanePoint[];
  /** Another value shows the whole anew: another hole. */
  readonly homeKey: string;
  readonly title: string;
  readonly subtitle: string;
  /** Whom the pictures below come from, as they ask to be named; empty for none. */
  readonly attribution: string;
  readonly placed: boolean;
  readonly units: UnitsPreference;
  readonly largeType: boolean;
  /** The slopes are tinted: their legend stands in the foot. */
  readonly slopeLegend: boolean;
  readonly pointer: 'draw' | 'hold';
  readonly label: string;
  readonly events: Omit<SurveyStageEvents, 'view'>;
  readonly onControls: (controls: SurveyControls | null) => void;
  readonly onBaseTrouble: (unreachable: readonly string[]) => void;
  readonly onBrokenPicture: (id: string) => void;
  readonly children?: React.ReactNode;
}

/** The plate of the survey: the ground as it stands, the hand over it, the frame round it. */
export function SurveyMap(props: SurveyMapProps): React.JSX.Element {
  const { frame, drawing, hand, baseLayers, pictures, homeKey, title, subtitle, placed, units, largeType } =
    props;
  const { slopeLegend } = props;
  const holder = useRef<HTMLDivElement>(null);
  const plate = useRef<HTMLDivElement>(null);
  const [made, setMade] = useState<{ readonly stage: SurveyStage; readonly frame: LocalFrame } | null>(null);
  // Once the plane is another, nothing more is shown on the map of the old one: it is taken away.
  const stage = made?.frame === frame ? made.stage : null;
  const [view, setView] = useState<PlateView | null>(null);
  const style = useMemo(() => screenStyle('survey', largeType ? 1.35 : 1), [largeType]);

  // The handlers change with every render; the map asks for the newest when something happens.
  const latest = useRef(props);
  useLayoutEffect(() => {
    latest.current = props;
  });

  useLayoutEffect(() => {
    const element = holder.current;
    if (element === null) return undefined;
    const fresh = new SurveyStage(
      element,
      frame,
      {
        press: (spot) => latest.current.events.press(spot),
        dragTo: (spot) => latest.current.events.dragTo(spot),
        release: (spot) => latest.current.events.release(spot),
        dropGesture: () => latest.current.events.dropGesture(),
        hover: (spot) => latest.current.events.hover(spot),
        view: setView,
      },
      (unreachable) => latest.current.onBaseTrouble(unreachable),
      (id) => latest.current.onBrokenPicture(id),
    );
    setMade({ stage: fresh, frame });
    latest.current.onControls({
      zoom: (by) => fresh.zoom(by),
      showAll: () => fresh.fit(latest.current.home()),
      bringIn: (at) => fresh.bringIn(at),
      middle: () => fresh.middle(),
      widthM: () => fresh.widthM(),
      metresPerPx: () => fresh.metresPerPx(),
      focus: () => {
        // To focus what has it already lays the whole page out for nothing.
        if (document.activeElement !== element) element.focus({ preventScroll: true });
      },
    });
    return () => {
      latest.current.onControls(null);
      fresh.remove();
      setMade(null);
    };
    // A new anchor is a new plane: the map starts afresh.
  }, [frame]);

  const size = usePlateSize(plate, stage?.map);

  useEffect(() => {
    if (stage === null) return;
    // Both layers are drawn for the same view, one after the other: what stands on the ground is worked out once.
    let last: { readonly key: string; readonly over: ReturnType<typeof drawSurveyOver> } | null = null;
    const overAt = (at: PlateView, visible: Box): ReturnType<typeof drawSurveyOver> => {
      const key = JSON.stringify([at, visible]);
      if (last?.key !== key) last = { key, over: drawSurveyOver(at, visible, style, drawing) };
      return last.over;
    };
    stage.over.show((at, visible) => overAt(at, visible).node);
    stage.under.show((at, visible) => drawSurveyUnder(at, style, drawing, overAt(at, visible).clear));
  }, [stage, style, drawing]);
  useEffect(() => {
    stage?.hand.show((at, visible) => drawHand(at, visible, style, hand));
  }, [stage, style, hand]);
  useEffect(() => {
    stage?.base.show(baseLayers);
  }, [stage, baseLayers]);
  useEffect(() => {
    stage?.pictures.show(pictures);
  }, [stage, pictures]);

  // Once for a hole, when the plate has its size; what is drawn later does not move the map.
  const sized = size !== null && size.width > 0;
  useEffect(() => {
    if (sized) stage?.fit(latest.current.home());
  }, [stage, homeKey, sized]);

  const margin = frameMargin(style);
  const foot = footPx(largeType);
  const surround = useMemo<SvgNode | null>(() => {
    if (view === null || size === null) return null;
    return drawSurround(view, size, foot, style, { title, subtitle, units, placed, slopeLegend });
  }, [view, size, foot, style, units, placed, title, subtitle, slopeLegend]);

  return (
    <section className="plate survey-plate" aria-label="Plate" ref={plate}>
      <div
        // The map adds classes of its own to these, so these never change.
        className="plate-map survey-map"
        data-pointer={props.pointer}
        ref={holder}
        role="application"
        aria-roledescription="plate"
        aria-label={props.label}
        tabIndex={0}
        style={{
          inset: `${String(margin)}px ${String(margin)}px ${String(margin + foot)}px ${String(margin)}px`,
        }}
      />
      <Drawing node={surround} className="plate-frame" />
      {props.attribution !== '' && (
        <div className="plate-attribution" style={{ right: margin + 6, bottom: 8 }}>
          {props.attribution}
        </div>
      )}
      {props.children}
    </section>
  );
}
