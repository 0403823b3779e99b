/**
 * Sent with every page and file of the window, by the desktop program and by the loopback host alike: nothing from
 * elsewhere may run, and the page is isolated, which gives its workers shared memory and fine timers.
 * Inline style is allowed because a printed playbook carries its own; blob frames show that playbook.
 */
export const pageHeaders: Readonly<Record<string, string>> = {
  'Content-Security-Policy': [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self' 'unsafe-inline'",
    "font-src 'self' data:",
    // Base layers are pictures from addresses a person chooses: over https, or from this machine. Only pictures.
    "img-src 'self' data: blob: https: http://127.0.0.1:* http://localhost:*",
    "connect-src 'self' blob:",
    "worker-src 'self' blob:",
    'frame-src blob:',
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'self'",
  ].join('; '),
  'Cross-Origin-Opener-Policy': 'same-origin',
  // Pictures from elsewhere come without cookies; the page stays isolated as under require-corp.
  'Cross-Origin-Embedder-Policy': 'credentialless',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
};
