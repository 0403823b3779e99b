import type { CommandIo } from './command.ts';

/** One line on a terminal that tells how far a long work has come; silent where stderr is not a terminal. */
export function progressLine(
  io: CommandIo,
  what: string,
): { show(done: number, of: number): void; end(): void } {
  if (io.stderr.isTTY !== true) return { show: () => undefined, end: () => undefined };
  return {
    show: (done, of) => void io.stderr.write(`\r${what} ${done} of ${of}`),
    end: () => void io.stderr.write('\r\u001b[K'),
  };
}
