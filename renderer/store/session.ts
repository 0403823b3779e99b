import { createStore } from 'zustand/vanilla';
import { holesInOrder } from '../../shared/atlas/document.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';

/** The workspaces that can be opened now, in the order of the tabs. */
export const workspaces = ['survey', 'positions', 'plan', 'playbook', 'player'] as const;
export type Workspace = (typeof workspaces)[number];

/** Columns of the ledger that can be sorted by. */
export const sortKeys = [
  'order',
  'size',
  'carry',
  'landing',
  'aim',
  'leave',
  'upAndDown',
  'trouble',
  'strokes',
  'cost',
] as const;
export type SortKey = (typeof sortKeys)[number];

/** What is chosen and looked at in one atlas. Not part of the document: it is never undone and never written to a file. */
export interface Session {
  readonly workspace: Workspace;
  readonly holeId: string | null;
  /** For each hole, what was last chosen there. */
  readonly ballByHole: Readonly<Record<string, string>>;
  readonly flagByHole: Readonly<Record<string, string>>;
  /** The option looked at, by `ball flag player`; without an entry it is the recommendation. */
  readonly optionByPair: Readonly<Record<string, string>>;
  /** The group of balls that alone is shown; null shows every ball. */
  readonly ballGroup: string | null;
  readonly sort: SortKey;
  readonly descending: boolean;
}

export const firstSession: Session = {
  workspace: 'plan',
  holeId: null,
  ballByHole: {},
  flagByHole: {},
  optionByPair: {},
  ballGroup: null,
  sort: 'order',
  descending: false,
};

export const sessionStore = createStore<Session>(() => firstSession);

export const pairKey = (ballId: string, flagId: string): string => `${ballId} ${flagId}`;

const strings = (value: unknown): Readonly<Record<string, string>> =>
  typeof value === 'object' && value !== null
    ? Object.fromEntries(
        Object.entries(value).filter((entry): entry is [string, string] => typeof entry[1] === 'string'),
      )
    : {};

/** A session as kept by any earlier version: what does not fit is left at its first value. */
export function sessionFrom(kept: unknown): Session {
  const value: Partial<Record<keyof Session, unknown>> =
    typeof kept === 'object' && kept !== null ? kept : {};
  return {
    workspace: workspaces.find((name) => name === value.workspace) ?? firstSession.workspace,
    holeId: typeof value.holeId === 'string' ? value.holeId : null,
    ballByHole: strings(value.ballByHole),
    flagByHole: strings(value.flagByHole),
    optionByPair: strings(value.optionByPair),
    ballGroup: typeof value.ballGroup === 'string' ? value.ballGroup : null,
    sort: sortKeys.find((name) => name === value.sort) ?? firstSession.sort,
    descending: value.descending === true,
  };
}

/** The session with a hole that exists, the first of the card where the kept one does not. */
export function withHole(session: Session, document: AtlasDocument): Session {
  const holes = holesInOrder(document);
  if (holes.some(({ id }) => id === session.holeId)) return session;
  return { ...session, holeId: holes[0]?.id ?? null };
}
