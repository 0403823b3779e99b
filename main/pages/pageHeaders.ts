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
    "img-src 'self' data: blob:",
    "connect-src 'self' blob:",
    "worker-src 'self' blob:",
    'frame-src blob:',
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'self'",
  ].join('; '),
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
};
