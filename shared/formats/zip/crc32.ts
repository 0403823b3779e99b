const table = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k += 1) c = (c & 1) === 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1;
  return c;
});

/** CRC-32 as ZIP and PNG use it (ISO 3309, reflected polynomial edb88320). */
export function crc32(bytes: Uint8Array): number {
  let c = 0xffffffff;
  for (let i = 0; i < bytes.length; i += 1)
    c = (c >>> 8) ^ (table[(c ^ (bytes[i] as number)) & 255] as number);
  return (c ^ 0xffffffff) >>> 0;
}
