import { type RefObject, useLayoutEffect, useState } from 'react';
import type * as L from 'leaflet';

export interface PlateSize {
  readonly width: number;
  readonly height: number;
}

/** Size of the plate in pixels, null before it is known; the map inside is told of each change. */
export function usePlateSize(plate: RefObject<HTMLElement | null>, map: L.Map | undefined): PlateSize | null {
  const [size, setSize] = useState<PlateSize | null>(null);
  useLayoutEffect(() => {
    const element = plate.current;
    if (element === null) return undefined;
    const measure = (): void => {
      setSize({ width: element.clientWidth, height: element.clientHeight });
      map?.invalidateSize({ animate: false });
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [plate, map]);
  return size;
}
