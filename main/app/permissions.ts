import type { Session } from 'electron';
import { WINDOW_ORIGIN } from './address.ts';

/** What the window may ask the system for; everything that is not here is refused. */
const granted: ReadonlySet<string> = new Set([
  'clipboard-sanitized-write', // copying a table or a coordinate
  'fullscreen',
]);

export const isGranted = (permission: string, origin: string): boolean =>
  granted.has(permission) && origin === WINDOW_ORIGIN;

export function limitPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, permission, answer, details) => {
    answer(isGranted(permission, originOf(details.requestingUrl)));
  });
  session.setPermissionCheckHandler((_contents, permission, requestingOrigin) =>
    isGranted(permission, originOf(requestingOrigin)),
  );
  session.setDevicePermissionHandler(() => false);
}

/** "app://swale" of any address in it. `URL.origin` is "null" for schemes it does not know. */
function originOf(url: string): string {
  return URL.canParse(url) ? `${new URL(url).protocol}//${new URL(url).host}` : '';
}
