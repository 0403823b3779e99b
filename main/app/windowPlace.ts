import { readFileSync } from 'node:fs';
import type { Rectangle } from 'electron';
import { writeAtomic } from '../files/writeAtomic.ts';

export interface WindowPlace {
  readonly bounds: Partial<Rectangle> & { readonly width: number; readonly height: number };
  readonly maximized: boolean;
}

const usual: WindowPlace = { bounds: { width: 1440, height: 900 }, maximized: false };

/** Where the window was left, if that place is still on a screen; else the usual size wherever the system likes. */
export function readWindowPlace(path: string, screens: readonly Rectangle[]): WindowPlace {
  let stored: unknown;
  try {
    stored = JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return usual;
  }
  if (typeof stored !== 'object' || stored === null || !('bounds' in stored)) return usual;
  const { bounds } = stored;
  if (!isRectangle(bounds) || bounds.width < 400 || bounds.height < 300) return usual;
  // The title bar must be within reach.
  const reachable = screens.some(
    (screen) =>
      bounds.x + bounds.width > screen.x + 100 &&
      bounds.x < screen.x + screen.width - 100 &&
      bounds.y >= screen.y &&
      bounds.y < screen.y + screen.height - 50,
  );
  const maximized = 'maximized' in stored && stored.maximized === true;
  return { bounds: reachable ? bounds : { width: bounds.width, height: bounds.height }, maximized };
}

export const writeWindowPlace = (path: string, bounds: Rectangle, maximized: boolean): Promise<void> =>
  writeAtomic(path, `${JSON.stringify({ bounds, maximized })}\n`);

function isRectangle(value: unknown): value is Rectangle {
  if (typeof value !== 'object' || value === null) return false;
  return ['x', 'y', 'width', 'height'].every(
    (key) => key in value && Number.isFinite((value as Readonly<Record<string, unknown>>)[key]),
  );
}
