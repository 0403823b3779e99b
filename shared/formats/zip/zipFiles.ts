import { strToU8, zipSync } from 'fflate/browser';

/** Files as one ZIP archive, the same bytes for the same content whatever the clock says. */
export function zipFiles(files: Readonly<Record<string, string | Uint8Array>>): Uint8Array {
  const packed = Object.entries(files).map(
    ([name, content]) => [name, typeof content === 'string' ? strToU8(content) : content] as const,
  );
  return zipSync(Object.fromEntries(packed), { mtime: '1980-01-01T00:00:00' });
}
