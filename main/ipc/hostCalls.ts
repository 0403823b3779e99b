import type { HostCalls } from '../../shared/protocol/host.ts';

/** What a message can carry. */
export type HostPart = 'text' | 'bytes';
type PartsOf<Given extends readonly unknown[]> = { readonly [I in keyof Given]: HostPart };

/** One message channel for each call of the host, with what it carries. */
export const hostCalls = {
  openAtlas: { channel: 'host:openAtlas', carries: [] },
  saveAtlas: { channel: 'host:saveAtlas', carries: ['text', 'bytes'] },
  saveAtlasAs: { channel: 'host:saveAtlasAs', carries: ['text', 'bytes'] },
  keepFile: { channel: 'host:keepFile', carries: ['text', 'bytes'] },
  printPlaybook: { channel: 'host:printPlaybook', carries: ['text', 'text'] },
  sampleAtlas: { channel: 'host:sampleAtlas', carries: [] },
} as const satisfies {
  readonly [Name in keyof HostCalls]: {
    readonly channel: string;
    readonly carries: PartsOf<Parameters<HostCalls[Name]>>;
  };
};
