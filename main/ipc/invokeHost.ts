import { ipcRenderer } from 'electron';
import type { Host, HostCalls } from '../../shared/protocol/host.ts';
import { isMenuCommand } from '../../shared/protocol/menuCommands.ts';
import { hostCalls } from './hostCalls.ts';
import { MENU_CHANNEL } from './menuChannel.ts';

/** The host as the window sees it: every call is a message to the main process, every menu command one from it. */
export const invokeHost: Host = {
  openAtlas: () => call('openAtlas'),
  saveAtlas: (handle, content) => call('saveAtlas', handle, content),
  saveAtlasAs: (suggestedName, content) => call('saveAtlasAs', suggestedName, content),
  keepFile: (suggestedName, content) => call('keepFile', suggestedName, content),
  printPlaybook: (html, suggestedName) => call('printPlaybook', html, suggestedName),
  sampleAtlas: () => call('sampleAtlas'),
  onCommand: (listener) => {
    const heard = (_event: unknown, command: unknown): void => {
      if (isMenuCommand(command)) listener(command);
    };
    ipcRenderer.on(MENU_CHANNEL, heard);
    return () => {
      ipcRenderer.removeListener(MENU_CHANNEL, heard);
    };
  },
};

function call<Name extends keyof HostCalls>(
  name: Name,
  ...parts: Parameters<HostCalls[Name]>
): ReturnType<HostCalls[Name]> {
  // The handler of this channel is that very method (answerHost.ts).
  return ipcRenderer.invoke(hostCalls[name].channel, ...parts) as ReturnType<HostCalls[Name]>;
}
