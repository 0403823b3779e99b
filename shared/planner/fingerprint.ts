/**
 * A short name for plain data: two 32-bit FNV-1a hashes (Fowler, Noll, Vo; from memory) with different starts
 * over its JSON text with object keys sorted. Good enough to tell edits apart; not against someone who wants a
 * clash.
 */
export function fingerprint(value: unknown): string {
  const text = stableText(value);
  let a = 0x811c9dc5;
  let b = 0x050c5d1f;
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    a = Math.imul(a ^ code, 0x01000193);
    b = Math.imul(b ^ code ^ (i & 0xff), 0x01000193);
  }
  return (a >>> 0).toString(16).padStart(8, '0') + (b >>> 0).toString(16).padStart(8, '0');
}

/** Undefined members read as null, as JSON reads them in a list. */
function stableText(value: unknown): string {
  if (value === undefined) return 'null';
  if (Array.isArray(value)) return `[${value.map(stableText).join(',')}]`;
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
    return `{${entries.map(([key, member]) => `${JSON.stringify(key)}:${stableText(member)}`).join(',')}}`;
  }
  return JSON.stringify(value);
}
