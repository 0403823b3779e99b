import { useMemo, useState } from 'react';
import { recordsOf } from '../../shared/atlas/document.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { LonLat, PlanePoint } from '../../shared/geometry/points.ts';
import { approachLine, type ApproachLine, greenMiddle } from '../../shared/planner/approachLine.ts';
import { fullSwingReachM } from '../../shared/planner/fullSwingReach.ts';
import { likelyMisses, type LikelyMisses } from '../../shared/planner/likelyMisses.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import { playBearing } from '../../shared/playbook/placeWords.ts';
import { USUAL_SEED } from '../../shared/protocol/planning.ts';

/** An approach most players have often, metres. */
const USUAL_APPROACH_M = 137;
/** What an approach may measure, metres. */
export const LEAST_APPROACH_M = 20;
export const MOST_APPROACH_M = 300;
const MISSES = { shots: 140, spots: 3, seed: USUAL_SEED };

/** Where approaches come from: along the line of play, a place marked on the plate, or (by id) a ball or a landmark. */
export type Origin = 'line' | 'marked' | `record:${string}`;

/** What somebody has set of an approach. */
export interface ApproachSettings {
  readonly origin: Origin;
  /** How far out on the line of play. */
  readonly distanceM: number;
  /** The club a full swing of which says how far out; null where the distance was given. */
  readonly clubId: string | null;
  /** Aimed at the flag chosen, not at the middle of the green. */
  readonly atFlag: boolean;
}

export interface Approach {
  readonly settings: ApproachSettings;
  readonly change: (change: Partial<ApproachSettings>) => void;
  /** Takes a place marked on the plate. */
  readonly mark: (at: LonLat) => void;
  readonly marked: boolean;
  /** Places to play from, far enough away. */
  readonly places: readonly { readonly origin: Origin; readonly words: string }[];
  /** Clubs and how far a full swing with each gets. */
  readonly clubs: readonly { readonly id: string; readonly name: string; readonly reachM: number }[];
  readonly line: ApproachLine | null;
  /** Null until they are asked for. */
  readonly found: LikelyMisses | null;
  readonly show: (shown: boolean) => void;
}

/** The approach that likely misses come from, and where it leaves balls. */
export function useLikelyMisses(
  document: AtlasDocument,
  holeId: string,
  still: Scene | null,
  flagAt: PlanePoint | null,
  ready: boolean,
): Approach {
  const [settings, setSettings] = useState<ApproachSettings>({
    origin: 'line',
    distanceM: USUAL_APPROACH_M,
    clubId: null,
    atFlag: false,
  });
  const [markedAt, setMarked] = useState<{ readonly holeId: string; readonly at: LonLat } | null>(null);
  const [shown, setShown] = useState(false);
  const marked = markedAt?.holeId === holeId ? markedAt.at : null;
  // Dragging a ball makes a new scene with every frame; these stay.
  const ground = still?.ground ?? null;
  const green = still?.green ?? null;
  const player = still?.player ?? null;
  const conditions = still?.conditions ?? null;
  const middle = useMemo(() => (green === null ? null : greenMiddle({ green })), [green]);
  const frame = still?.frame ?? null;
  const places = useMemo(
    () => (frame === null || middle === null ? [] : farPlaces(document, holeId, frame, middle)),
    [document, holeId, frame, middle],
  );
  const { origin } = settings;
  const bearing = still === null ? 0 : playBearing(still);
  const clubs = useMemo(
    () =>
      player === null || conditions === null
        ? []
        : player.bag
            .filter(({ kind }) => kind !== 'putter')
            .map(({ id, name, loftDeg }) => ({
              id,
              name,
              reachM: fullSwingReachM(player, conditions, bearing, loftDeg),
            })),
    [player, conditions, bearing],
  );
  const lineFrom = (): ApproachLine | null => {
    if (still === null || middle === null) return null;
    const target = settings.atFlag && flagAt !== null ? flagAt : middle;
    const known = places.some((place) => place.origin === origin);
    const from =
      origin === 'marked' ? marked : known ? placeOf(document, origin.slice('record:'.length)) : null;
    if (from !== null) return approachLine({ at: still.frame.toPlane(from) }, target);
    const distanceM = clubs.find(({ id }) => id === settings.clubId)?.reachM ?? settings.distanceM;
    return approachLine({ bearingDeg: bearing, distanceM }, target);
  };
  const here = lineFrom();
  const ends = here === null ? '' : JSON.stringify(here);
  // The ends name the line: a new one of the same ends is no other, and is not drawn again.
  // eslint-disable-next-line react-hooks/exhaustive-deps
  const line = useMemo(() => here, [ends]);
  const found = useMemo(
    () =>
      ground === null ||
      player === null ||
      conditions === null ||
      line === null ||
      tooNear(line) ||
      !shown ||
      !ready
        ? null
        : likelyMisses({ ground, player, conditions }, line, MISSES),
    [ground, conditions, player, line, shown, ready],
  );
  return useMemo(
    () => ({
      settings:
        places.some((place) => place.origin === origin) || (origin === 'marked' && marked !== null)
          ? settings
          : { ...settings, origin: 'line' },
      change: (change) => setSettings((before) => ({ ...before, ...change })),
      mark: (at) => {
        setMarked({ holeId, at });
        setSettings((before) => ({ ...before, origin: 'marked' }));
        setShown(true);
      },
      marked: marked !== null,
      places,
      clubs,
      line,
      found,
      show: setShown,
    }),
    [settings, origin, marked, holeId, places, clubs, line, found],
  );
}

export const tooNear = ({ distanceM }: ApproachLine): boolean =>
  distanceM < LEAST_APPROACH_M || distanceM > MOST_APPROACH_M;

const placeOf = (document: AtlasDocument, id: string): LonLat | null => {
  const record = document.records.get(id);
  return record?.type === 'ballPosition' || record?.type === 'landmark' ? record.at : null;
};

/** Balls of the hole and landmarks from which the green is an approach away. */
function farPlaces(
  document: AtlasDocument,
  holeId: string,
  frame: Scene['frame'],
  middle: PlanePoint,
): Approach['places'] {
  const balls = recordsOf(document, 'ballPosition').filter((ball) => ball.holeId === holeId);
  return [
    ...recordsOf(document, 'landmark').map(({ id, name, at }) => ({ id, words: name, at })),
    ...balls.map(({ id, label, name, at }) => ({
      id,
      words: `ball ${label}${name === '' ? '' : `, ${name}`}`,
      at,
    })),
  ].flatMap(({ id, words, at }) =>
    tooNear(approachLine({ at: frame.toPlane(at) }, middle))
      ? []
      : [{ origin: `record:${id}` as const, words }],
  );
}
