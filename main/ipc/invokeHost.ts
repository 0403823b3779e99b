import { ipcRenderer } from 'electron';
import type { Host } from '../../shared/protocol/host.ts';
import { hostCalls } from './hostCalls.ts';

/** The host as the window sees it: every call is a message to the main process. */
export const invokeHost: Host = {
  openAtlas: () => call('openAtlas'),
  saveAtlas: (handle, text) => call('saveAtlas', handle, text),
  saveAtlasAs: (suggestedName, text) => call('saveAtlasAs', suggestedName, text),
  keepFile: (suggestedName, content) => call('keepFile', suggestedName, content),
  printPlaybook: (html, suggestedName) => call('printPlaybook', html, suggestedName),
  sampleAtlas: () => call('sampleAtlas'),
};

function call<Name extends keyof Host>(name: Name, ...parts: Parameters<Host[Name]>): ReturnType<Host[Name]> {
  // The handler of this channel is that very method (answerHost.ts).
  return ipcRenderer.invoke(hostCalls[name].channel, ...parts) as ReturnType<Host[Name]>;
}
