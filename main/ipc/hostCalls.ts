import type { Host } from '../../shared/protocol/host.ts';

/** One message channel for each call of the host, with how many texts it takes. */
export const hostCalls = {
  openAtlas: { channel: 'host:openAtlas', texts: 0 },
  saveAtlas: { channel: 'host:saveAtlas', texts: 2 },
  saveAtlasAs: { channel: 'host:saveAtlasAs', texts: 2 },
  printPlaybook: { channel: 'host:printPlaybook', texts: 2 },
  sampleAtlas: { channel: 'host:sampleAtlas', texts: 0 },
} as const satisfies {
  readonly [Name in keyof Host]: {
    readonly channel: string;
    readonly texts: Parameters<Host[Name]>['length'];
  };
};
