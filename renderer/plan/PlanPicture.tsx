import { useCallback, useDeferredValue, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { LonLat, PlanePoint } from '../../shared/geometry/points.ts';
import type { PlanOption } from '../../shared/planner/plan.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import { screenStyle } from '../../shared/plate/style.ts';
import { surroundsClasses, type SurroundsLayer } from '../../shared/plate/surroundsClasses.ts';
import { withSurroundsKey } from '../../shared/plate/surroundsKey.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { type MapControls, PlateMap } from '../map/PlateMap.tsx';
import { measureSpots } from '../store/measureSpots.ts';
import type { Planning } from '../store/planning.ts';
import type { Settled } from '../store/useSettled.ts';
import { Trouble } from '../ui/Trouble.tsx';
import { useBeat } from '../ui/useBeat.ts';
import { planShots } from './planShots.ts';
import type { Pictured } from './savePicture.ts';
import { SectionView } from './SectionView.tsx';
import { SurroundsBar, surroundsName, SurroundsSelect, surroundsTitle } from './SurroundsBar.tsx';
import { surroundsOff, type SurroundsChoice } from './surroundsChoice.ts';
import { useSurrounds } from './useSurrounds.ts';

interface PlanPictureProps {
  readonly document: AtlasDocument;
  readonly derived: Settled & { readonly scene: Scene };
  readonly planning: Pick<Planning, 'surrounds'>;
  /** Balls and flags are being walked through. */
  readonly walking: boolean;
  /** The option drawn in red; null for none. */
  readonly option: PlanOption | null;
  /** Options beside it, in the second ink. */
  readonly others: readonly PlanOption[];
  /** A landing spot that can be moved by hand; null for none. */
  readonly landing: PlanePoint | null;
  readonly moveLanding: (at: PlanePoint) => void;
  readonly units: UnitsPreference;
  readonly largeType: boolean;
  readonly readOnly: boolean;
  readonly choose: (id: string, kind: 'ball' | 'flag') => void;
  readonly hold: (held: { readonly id: string; readonly at: LonLat } | null) => void;
  readonly drop: (id: string, at: LonLat) => void;
  readonly save: (what: Pictured, kind: 'svg' | 'png', drawing: SvgNode) => void;
}

/** The plate and the section of the shots looked at. */
export function PlanPicture(props: PlanPictureProps): React.JSX.Element {
  const { derived, option, others, units, largeType } = props;
  const { scene, ballId, flagId, stage } = derived;
  const doubted = useStore(measureSpots);
  const measureHere = useMemo(
    () => (doubted.holeId === scene.hole.id && stage === 'firm' ? doubted.spots.map(({ at }) => at) : []),
    [doubted, scene.hole.id, stage],
  );
  const [controls, setControls] = useState<MapControls | null>(null);
  const [ground, setGround] = useState<SurroundsChoice>(surroundsOff);
  const flag = scene.flags.find(({ record }) => record.id === flagId)?.record;
  const ball = scene.balls.find(({ record }) => record.id === ballId);
  const flagLabels = useMemo(
    () => new Map(scene.flags.map(({ record }) => [record.id, record.label])),
    [scene.flags],
  );
  const flagIds = useMemo(
    () =>
      ground.over === 'every' ? scene.flags.map(({ record }) => record.id) : flagId === null ? [] : [flagId],
    [ground.over, scene.flags, flagId],
  );
  const key = useMemo(
    () =>
      JSON.stringify([
        scene.groundKey,
        scene.conditions,
        scene.player,
        scene.flags.flatMap(({ record }) => (flagIds.includes(record.id) ? [record.id, record.at] : [])),
      ]),
    [scene, flagIds],
  );
  const wanted = ground.by !== 'off' && derived.held === null && stage === 'firm';
  const surrounds = useSurrounds(props.planning, flagIds, key, wanted);
  const layer = useMemo<SurroundsLayer | null>(
    () => (ground.by === 'off' || surrounds.map === null ? null : { map: surrounds.map, by: ground.by }),
    [ground.by, surrounds.map],
  );
  const shots = useMemo(
    () =>
      option === null ? [] : planShots(scene, ballId, flagId, option, others, stage === 'coarse', units),
    [scene, ballId, flagId, option, others, stage, units],
  );
  const moving = derived.held !== null;
  const coarse = stage === 'coarse';
  // From the side the shot is drawn a moment after the plate and the answer, which the eye is on, and while the hand moves
  // something at a slower beat.
  const side = useDeferredValue(
    useBeat(
      useMemo(
        () => ({ scene, ballId, flagId, option: derived.groundReady ? option : null, others, coarse }),
        [scene, ballId, flagId, derived.groundReady, option, others, coarse],
      ),
      moving || props.walking,
    ),
  );
  const readBall = useMemo(
    () => (ball === undefined ? null : { label: ball.record.label, at: ball.at }),
    [ball],
  );
  const flagLabel = flag?.label ?? '';
  const several = scene.flags.length > 1;
  const select = useMemo(
    () => <SurroundsSelect choice={ground} flagLabel={flagLabel} several={several} choose={setGround} />,
    [ground, flagLabel, several],
  );
  const stop = useCallback(() => setGround(surroundsOff), []);
  const flagWords = ground.over === 'every' && several ? 'every flag' : `flag ${flagLabel}`;
  // The key stands outside the plate on screen; in a picture it goes along.
  const pictured = useMemo<MapControls | null>(
    () =>
      controls === null || layer === null
        ? controls
        : {
            ...controls,
            picture: () => {
              const plate = controls.picture();
              if (plate === null) return null;
              // Away from the window nothing else says what the classes are of.
              const title = `${surroundsName(ground)}. ${surroundsTitle(ground, layer.map, flagWords, units)}`;
              const style = screenStyle('picture-key', largeType ? 1.35 : 1);
              return withSurroundsKey(plate, title, surroundsClasses(layer), style);
            },
          },
    [controls, layer, ground, flagWords, units, largeType],
  );
  return (
    <div className="plan-left">
      <PlateMap
        scene={scene}
        relief={derived.relief}
        document={props.document}
        ballId={ballId}
        flagId={flagId}
        shots={shots}
        layer={layer}
        measureHere={measureHere}
        landing={props.landing}
        moveLanding={props.moveLanding}
        moving={moving}
        awaited={stage === 'none' && derived.planTrouble === null}
        units={units}
        largeType={largeType}
        editable={!props.readOnly}
        choose={props.choose}
        hold={(id, at) => props.hold({ id, at })}
        drop={props.drop}
        onControls={setControls}
      />
      <SurroundsBar
        choice={ground}
        layer={layer}
        share={surrounds.share}
        flagWords={flagWords}
        units={units}
        ball={readBall}
        flagLabels={flagLabels}
        controls={controls}
        stop={stop}
      />
      {surrounds.trouble !== null && <Trouble trouble={surrounds.trouble} />}
      <SectionView
        scene={side.scene}
        ballId={side.ballId}
        flagId={side.flagId}
        option={side.option}
        others={side.others}
        save={props.save}
        choice={select}
        coarse={side.coarse}
        idle={option === null && (derived.stale === 'givenUp' || derived.planTrouble !== null)}
        units={units}
        largeType={largeType}
        controls={pictured}
      />
    </div>
  );
}
