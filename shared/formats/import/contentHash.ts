/** Eight hex digits that tell contents apart (FNV-1a, 32 bits): part of the ids of what comes from a file. */
export function contentHash(content: Uint8Array): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < content.length; i += 1) {
    hash ^= content[i] ?? 0;
    hash = Math.imul(hash, 0x01000193);
  }
  return (hash >>> 0).toString(16).padStart(8, '0');
}
