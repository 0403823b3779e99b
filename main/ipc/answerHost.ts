import { ipcMain, type IpcMainInvokeEvent } from 'electron';
import type { HostCalls, HostResult } from '../../shared/protocol/host.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { hostCalls, type HostPart } from './hostCalls.ts';

/**
 * Answers the window's calls. A call from any frame that is not the window's own page is refused, as is one with
 * anything but what it should carry; whatever goes wrong comes back as a sentence.
 */
export function answerHost(
  host: HostCalls,
  isOwnFrame: (frame: IpcMainInvokeEvent['senderFrame']) => boolean,
): void {
  const answer = (
    name: keyof HostCalls,
    call: (texts: readonly string[], bytes: Uint8Array) => Promise<HostResult<unknown>>,
  ): void => {
    const { channel, carries }: { channel: string; carries: readonly HostPart[] } = hostCalls[name];
    ipcMain.handle(channel, async (event, ...given: readonly unknown[]): Promise<HostResult<unknown>> => {
      if (!isOwnFrame(event.senderFrame)) return refused('Only the window itself may ask for this.');
      const fits = given.length === carries.length && given.every((one, i) => kindOf(one) === carries[i]);
      if (!fits) return refused(`${name} was called wrongly.`);
      const texts = given.filter((one) => typeof one === 'string');
      const [bytes] = given.filter((one) => one instanceof Uint8Array);
      try {
        return await call(texts, bytes ?? new Uint8Array());
      } catch (error) {
        if (error instanceof InputProblem) return refused(error.message);
        return refused(`Swale could not do this: ${error instanceof Error ? error.message : String(error)}`);
      }
    });
  };

  answer('openAtlas', () => host.openAtlas());
  answer('saveAtlas', ([handle = ''], bytes) => host.saveAtlas(handle, bytes));
  answer('saveAtlasAs', ([name = ''], bytes) => host.saveAtlasAs(name, bytes));
  answer('keepFile', ([name = ''], bytes) => host.keepFile(name, bytes));
  answer('printPlaybook', ([html = '', name = '']) => host.printPlaybook(html, name));
  answer('sampleAtlas', () => host.sampleAtlas());
}

const kindOf = (part: unknown): HostPart | null =>
  typeof part === 'string' ? 'text' : part instanceof Uint8Array ? 'bytes' : null;

const refused = (reason: string): HostResult<never> => ({ ok: false, reason });
