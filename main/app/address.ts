/** The window's own pages: a standard, secure scheme, so that storage, workers and isolation work as on the web. */
export const SCHEME = 'app';
export const WINDOW_ORIGIN = `${SCHEME}://swale`;
export const WINDOW_URL = `${WINDOW_ORIGIN}/`;
/** Pages handed over to be printed live under an origin of their own, without script or access to anything. */
export const PRINT_ORIGIN = `${SCHEME}://print`;

export const isWindowUrl = (url: string): boolean => url.startsWith(WINDOW_URL);
