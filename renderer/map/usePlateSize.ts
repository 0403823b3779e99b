import { type RefObject, useLayoutEffect, useState } from 'react';
import type * as L from 'leaflet';

/** Pixels. */
export interface PlateSize {
  readonly width: number;
  readonly height: number;
  /** Of the map inside the frame and above the foot, which large letters make smaller while the plate stays as it is. */
  readonly mapWidth: number;
  readonly mapHeight: number;
}

/** Size of the plate and of the map in it, null before it is known; the map is told of each change. */
export function usePlateSize(plate: RefObject<HTMLElement | null>, map: L.Map | undefined): PlateSize | null {
  const [size, setSize] = useState<PlateSize | null>(null);
  useLayoutEffect(() => {
    const element = plate.current;
    if (element === null) return undefined;
    const inside = map?.getContainer();
    const measure = (): void => {
      map?.invalidateSize({ animate: false });
      setSize({
        width: element.clientWidth,
        height: element.clientHeight,
        mapWidth: inside?.clientWidth ?? 0,
        mapHeight: inside?.clientHeight ?? 0,
      });
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    if (inside !== undefined) observer.observe(inside);
    return () => observer.disconnect();
  }, [plate, map]);
  return size;
}
