import { ipcMain, type IpcMainInvokeEvent } from 'electron';
import type { Host, HostResult } from '../../shared/protocol/host.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { hostCalls } from './hostCalls.ts';

/**
 * Answers the window's calls. A call from any frame that is not the window's own page is refused, as is one with
 * anything but the texts it should carry; whatever goes wrong comes back as a sentence.
 */
export function answerHost(
  host: Host,
  isOwnFrame: (frame: IpcMainInvokeEvent['senderFrame']) => boolean,
): void {
  const answer = (
    name: keyof Host,
    call: (texts: readonly string[]) => Promise<HostResult<unknown>>,
  ): void => {
    const { channel, texts } = hostCalls[name];
    ipcMain.handle(channel, async (event, ...given: readonly unknown[]): Promise<HostResult<unknown>> => {
      if (!isOwnFrame(event.senderFrame)) return refused('Only the window itself may ask for this.');
      const strings = given.filter((one) => typeof one === 'string');
      if (given.length !== texts || strings.length !== texts) return refused(`${name} was called wrongly.`);
      try {
        return await call(strings);
      } catch (error) {
        if (error instanceof InputProblem) return refused(error.message);
        return refused(`Swale could not do this: ${error instanceof Error ? error.message : String(error)}`);
      }
    });
  };

  answer('openAtlas', () => host.openAtlas());
  answer('saveAtlas', ([handle = '', text = '']) => host.saveAtlas(handle, text));
  answer('saveAtlasAs', ([name = '', text = '']) => host.saveAtlasAs(name, text));
  answer('printPlaybook', ([html = '', name = '']) => host.printPlaybook(html, name));
  answer('sampleAtlas', () => host.sampleAtlas());
}

const refused = (reason: string): HostResult<never> => ({ ok: false, reason });
