import { memo, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { PlanOption } from '../../shared/planner/plan.ts';
import { optionName } from '../../shared/planner/optionName.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import { drawSection, type SectionContent, type SectionLayout } from '../../shared/plate/section.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import { screenStyle } from '../../shared/plate/style.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { MapButtons } from '../map/MapButtons.tsx';
import type { MapControls } from '../map/PlateMap.tsx';
import { Download } from 'lucide-react';
import { Menu } from '../ui/Menu.tsx';
import { Drawing } from '../ui/drawing.tsx';
import { leavesPicture } from './leavesPicture.ts';
import type { Pictured } from './savePicture.ts';
import { besideMark } from './besideMark.ts';
import { landLabel } from './shotLabels.ts';
import './section.css';

interface SectionViewProps {
  readonly scene: Scene;
  readonly ballId: string | null;
  readonly flagId: string | null;
  readonly option: PlanOption | null;
  /** Options beside it, in the second ink. */
  readonly others: readonly PlanOption[];
  readonly coarse: boolean;
  /** No shot is to be expected: there is none, and none is worked out. */
  readonly idle: boolean;
  readonly units: UnitsPreference;
  readonly largeType: boolean;
  readonly controls: MapControls | null;
  /** Stands in the heading: what the plate above shows. */
  readonly choice: React.ReactNode;
  readonly save: (what: Pictured, kind: 'svg' | 'png', drawing: SvgNode) => void;
}

/** Of a picture kept: wide enough for the shot to be seen whatever room the window has. */
const ALONE: SectionLayout = { width: 800, height: 260 };

/** The ground and the shot from the side, along the line from ball to flag. */
export const SectionView = memo(function SectionView(props: SectionViewProps): React.JSX.Element {
  const { scene, ballId, flagId, option, others, coarse, idle, units, largeType, controls } = props;
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

  const ball = scene.balls.find(({ record }) => record.id === ballId);
  const flag = scene.flags.find(({ record }) => record.id === flagId);
  // Without a line there is nothing to cut along, and no shot will come.
  const lined = ball !== undefined && flag !== undefined;
  const draw = useMemo(() => {
    if (option === null || ball === undefined || flag === undefined) return null;
    const content: SectionContent = {
      ground: scene.ground,
      option,
      ball: ball.at,
      ballLabel: ball.record.label,
      flag: flag.at,
      flagLabel: flag.record.label,
      units,
      landText: landLabel(option, units),
      coarse,
      others,
      othersText: others.map((_, i) => besideMark(i + 1, others.length + 1)),
    };
    return (size: SectionLayout) => drawSection(size, screenStyle('section', largeType ? 1.2 : 1), content);
  }, [scene, ball, flag, option, others, coarse, units, largeType]);
  const drawn = useMemo(
    () => (layout === null || layout.width < 100 || draw === null ? null : draw(layout)),
    [draw, layout],
  );

  return (
    <section className="section" aria-label={lined ? 'Section along the shot' : 'The plate'}>
      <div className="section-head">
        {lined && !idle && (
          <div className="section-title">
            <h2>
              Section<span className="roomy-words"> along the shot</span>
            </h2>
            <span className="section-scale">{drawn?.scaleText ?? ''}</span>
          </div>
        )}
        {props.choice}
        {controls !== null && (
          <div className="section-tools">
            <Menu
              className="icon-button"
              name="Save a picture"
              align="end"
              groups={pictureMenu(
                {
                  plate: () => controls.picture(),
                  ...(draw === null ? {} : { section: () => draw(ALONE).node }),
                  ...(option === null || flag === undefined
                    ? {}
                    : { leaves: () => leavesPicture(option, flag.at, units) }),
                },
                props.save,
              )}
              button={<Download size={16} strokeWidth={1.9} aria-hidden />}
            />
            <MapButtons controls={controls} />
          </div>
        )}
      </div>
      <div className="section-drawing" ref={holder} hidden={!lined}>
        <Drawing
          node={drawn?.node ?? null}
          {...(option === null ? {} : { label: `${optionName(option)} from the side` })}
        />
      </div>
    </section>
  );
});

const titles: Readonly<Record<Pictured, string>> = {
  plate: 'The plate',
  section: 'The section',
  leaves: 'Where they stop',
};

function pictureMenu(
  drawings: Partial<Readonly<Record<Pictured, () => SvgNode | null>>>,
  save: SectionViewProps['save'],
): React.ComponentProps<typeof Menu>['groups'] {
  return (['plate', 'section', 'leaves'] as const).flatMap((what) => {
    const draw = drawings[what];
    if (draw === undefined) return [];
    return {
      title: titles[what],
      items: (['svg', 'png'] as const).map((kind) => ({
        key: `${what}-${kind}`,
        label: kind === 'svg' ? 'As SVG, for print' : 'As PNG',
        run: () => {
          const drawing = draw();
          if (drawing !== null) save(what, kind, drawing);
        },
      })),
    };
  });
}
