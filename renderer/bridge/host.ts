import type { Host } from '../../shared/protocol/host.ts';
import { browserHost } from './browserHost.ts';

declare global {
  interface Window {
    /** Put there by the desktop program's preload script; absent in a plain browser. */
    readonly swaleHost?: Host;
  }
}

let chosen: Host | null = null;

/** The program around the window. Nothing else in renderer/ knows which of the two it is. */
export function host(): Host {
  chosen ??= window.swaleHost ?? browserHost();
  return chosen;
}
