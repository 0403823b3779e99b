import { MapButtons } from '../map/MapButtons.tsx';
import { useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { PlanOption } from '../../shared/planner/plan.ts';
import { optionName } from '../../shared/planner/optionName.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import { drawSection } from '../../shared/plate/section.ts';
import { screenStyle } from '../../shared/plate/style.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { MapControls } from '../map/PlateMap.tsx';
import { Drawing } from '../ui/drawing.tsx';
import { landLabel } from './shotLabels.ts';

interface SectionViewProps {
  readonly scene: Scene;
  readonly ballId: string | null;
  readonly flagId: string | null;
  readonly option: PlanOption | null;
  readonly coarse: boolean;
  readonly units: UnitsPreference;
  readonly largeType: boolean;
  readonly controls: MapControls | null;
}

/** The ground and the shot from the side, along the line from ball to flag. */
export function SectionView(props: SectionViewProps): React.JSX.Element {
  const { scene, ballId, flagId, option, coarse, units, largeType, controls } = props;
  const holder = useRef<HTMLDivElement>(null);
  const [layout, setLayout] = useState<{ readonly width: number; readonly height: number } | null>(null);
  useLayoutEffect(() => {
    const element = holder.current;
    if (element === null) return undefined;
    const measure = (): void => setLayout({ width: element.clientWidth, height: element.clientHeight });
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);

  const drawn = useMemo(() => {
    const ball = scene.balls.find(({ record }) => record.id === ballId);
    const flag = scene.flags.find(({ record }) => record.id === flagId);
    if (
      layout === null ||
      layout.width < 100 ||
      option === null ||
      ball === undefined ||
      flag === undefined
    ) {
      return null;
    }
    return drawSection(layout, screenStyle('section', largeType ? 1.2 : 1), {
      ground: scene.ground,
      option,
      ball: ball.at,
      ballLabel: ball.record.label,
      flag: flag.at,
      flagLabel: flag.record.label,
      units,
      landText: landLabel(option, units),
      coarse,
    });
  }, [scene, ballId, flagId, option, coarse, units, largeType, layout]);

  return (
    <section className="section" aria-label="Section along the shot">
      <div className="section-head">
        <h2>Section along the shot</h2>
        <span className="section-scale">{drawn?.scaleText ?? ''}</span>
        {controls !== null && <MapButtons controls={controls} />}
      </div>
      <div className="section-drawing" ref={holder}>
        <Drawing
          node={drawn?.node ?? null}
          {...(option === null ? {} : { label: `${optionName(option)} from the side` })}
        />
      </div>
    </section>
  );
}
