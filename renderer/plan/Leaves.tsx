import { useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import type { PlanOption } from '../../shared/planner/plan.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { Drawing } from '../ui/drawing.tsx';
import { leavesPicture } from './leavesPicture.ts';

interface LeavesProps {
  readonly option: PlanOption;
  readonly flag: PlanePoint;
  readonly units: UnitsPreference;
  readonly large: boolean;
}

/** How far from the hole the simulated balls stop, and on what ground where they miss the green. */
export function Leaves({ option, flag, units, large }: LeavesProps): React.JSX.Element {
  const holder = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState<number | null>(null);
  useLayoutEffect(() => {
    const element = holder.current;
    if (element === null) return undefined;
    // It tells the first width as well, once it is laid out: to ask for it here would have all of it laid out twice.
    const observer = new ResizeObserver(([entry]) => setWidth(Math.round(entry?.contentRect.width ?? 0)));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const drawing = useMemo(
    () => (width === null ? null : leavesPicture(option, flag, units, width, large ? 1.2 : 1)),
    [option, flag, units, width, large],
  );
  return (
    <section className="leaves" aria-label="Where they stop">
      <h2>Where {option.finishCodes.length} shots stop</h2>
      <div ref={holder}>
        <Drawing node={drawing} label={String(drawing?.attributes['aria-label'] ?? '')} />
      </div>
    </section>
  );
}
