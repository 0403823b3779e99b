import type {
  AreaRecord,
  AtlasDocument,
  BallPosition,
  HoleLocation,
  HoleRecord,
  PlayerRecord,
} from '../atlas/records.ts';
import type { Conditions } from '../ball/shot.ts';
import type { LocalFrame } from '../geometry/localFrame.ts';
import type { PlanePoint, PlanePolygon } from '../geometry/points.ts';
import { fitSurface, whatIsFitted } from '../terrain/fitSurface.ts';
import type { GridSurface } from '../terrain/hermiteGrid.ts';
import { surveyedGround, type SurveyedGround } from '../terrain/surveyedGround.ts';
import type { TerrainInput } from '../terrain/terrainInput.ts';
import { fingerprint } from './fingerprint.ts';
import { scenePlane } from './scenePlane.ts';

export interface SceneFlag {
  readonly record: HoleLocation;
  readonly at: PlanePoint;
}

export interface SceneBall {
  readonly record: BallPosition;
  readonly at: PlanePoint;
}

/**
 * One hole made ready for planning: everything in the plane, the ground fitted, the player and the day in hand.
 */
export interface Scene {
  /** Names everything a plan of this hole depends on, besides the ball, the flag and the seed. */
  readonly key: string;
  /** Names what the fitted ground depends on. */
  readonly groundKey: string;
  /** Names what its heights depend on: equal keys give equal fits, bit for bit. */
  readonly surfaceKey: string;
  readonly hole: HoleRecord;
  readonly frame: LocalFrame;
  readonly input: TerrainInput;
  readonly surface: GridSurface;
  readonly ground: SurveyedGround<GridSurface>;
  readonly green: { readonly record: AreaRecord; readonly polygon: PlanePolygon };
  readonly flags: readonly SceneFlag[];
  readonly balls: readonly SceneBall[];
  readonly conditions: Conditions;
  readonly player: PlayerRecord;
}

/** A scene before its ground is fitted, with the names of what it depends on. */
export type PreparedScene = Omit<Scene, 'surface' | 'ground'>;

/** What a scene stands on. */
export type SceneGround = Pick<Scene, 'input' | 'surface' | 'ground'>;

/**
 * From records to the plane. Throws InputProblem for an unknown hole, a hole without a green, a green
 * without elevation evidence, positions that are not numbers, and a document without a player or conditions.
 *
 * `known` may give an earlier scene of the same hole: its ground is taken over when nothing under it has
 * changed, which makes dragging a ball or a flag cheap, and its fit when no height is another.
 * @param fitted a fit made elsewhere, by its `surfaceKey`
 */
export function buildScene(
  document: AtlasDocument,
  holeId: string,
  known?: Scene,
  fitted?: (surfaceKey: string) => GridSurface | undefined,
): Scene {
  const prepared = prepareScene(document, holeId);
  if (known?.groundKey === prepared.groundKey) return sceneOn(prepared, known);
  const { surfaceKey } = prepared;
  const surface =
    known?.surfaceKey === surfaceKey ? known.surface : (fitted?.(surfaceKey) ?? fitSurface(prepared.input));
  return sceneOn(prepared, {
    input: prepared.input,
    surface,
    ground: surveyedGround(surface, prepared.input),
  });
}

/** The same without the fit, which takes most of the time. Throws as `buildScene` does. */
export function prepareScene(document: AtlasDocument, holeId: string): PreparedScene {
  const plane = scenePlane(document, holeId);
  const { areas, walls } = plane.input;
  const surfaceKey = fingerprint(whatIsFitted(plane.input));
  const groundKey = fingerprint([surfaceKey, areas, walls]);
  return { ...plane, key: keyOf(plane, groundKey), groundKey, surfaceKey };
}

/** A prepared scene on ground fitted elsewhere. */
export function sceneOn(prepared: PreparedScene, { input, surface, ground }: SceneGround): Scene {
  return { ...prepared, input, surface, ground };
}

/**
 * The name of everything `buildScene` reads for this hole; equal keys give equal scenes. Throws as buildScene
 * does.
 */
export function sceneKey(document: AtlasDocument, holeId: string): string {
  return prepareScene(document, holeId).key;
}

function keyOf(plane: ReturnType<typeof scenePlane>, groundKey: string): string {
  const { hole, flags, balls, conditions, player } = plane;
  return fingerprint([groundKey, hole, flags, balls, conditions, player]);
}
