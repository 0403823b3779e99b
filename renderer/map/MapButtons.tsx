import { Maximize2, Minus, Plus } from 'lucide-react';
import type { MapControls } from './PlateMap.tsx';

/** Closer, further, and the whole green: beside the plate, for nothing of ours lies over the ground. */
export function MapButtons({
  controls,
}: {
  readonly controls: Pick<MapControls, 'zoom' | 'showGreen'>;
}): React.JSX.Element {
  return (
    <div className="map-controls" role="group" aria-label="Map">
      <button
        type="button"
        className="icon-button"
        aria-label="Closer"
        title="Closer"
        onClick={() => controls.zoom(0.5)}
      >
        <Plus size={17} strokeWidth={1.9} aria-hidden />
      </button>
      <button
        type="button"
        className="icon-button"
        aria-label="Further"
        title="Further"
        onClick={() => controls.zoom(-0.5)}
      >
        <Minus size={17} strokeWidth={1.9} aria-hidden />
      </button>
      <button
        type="button"
        className="icon-button"
        aria-label="Show the whole green"
        title="Show the whole green"
        onClick={() => controls.showGreen()}
      >
        <Maximize2 size={15} strokeWidth={1.9} aria-hidden />
      </button>
    </div>
  );
}
