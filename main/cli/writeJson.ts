import type { Writable } from 'node:stream';

/** Prints a value as JSON with every digit; flat numeric arrays become plain lists. */
export function writeJson(stream: Writable, value: unknown): void {
  const plain = (_key: string, member: unknown): unknown =>
    ArrayBuffer.isView(member) && !(member instanceof DataView)
      ? Array.from(member as Float64Array | Uint8Array)
      : member;
  stream.write(`${JSON.stringify(value, plain, 1)}\n`);
}
