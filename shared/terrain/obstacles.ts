import type { PlanePoint } from '../geometry/points.ts';
import { centroid } from '../geometry/ring.ts';
import { flatRing } from './rings.ts';
import type { Surface } from './surface.ts';
import type { TerrainInput } from './terrainInput.ts';

/** An upright prism in the air, as the ball model sees it. */
export interface GroundObstacle {
  readonly kind: 'tree' | 'wall';
  readonly name: string;
  /** Ring as flat east, north pairs in metres, not closed. */
  readonly ringM: Float64Array;
  readonly bottomM: number;
  readonly topM: number;
}

/** A tree nobody measured: the top of its crown and the underside, metres above the ground. */
export const DEFAULT_TREE_HEIGHT_M = 8;
export const DEFAULT_CANOPY_BASE_M = 2;
const WALL_HALF_WIDTH_M = 0.15;
/** A wall stands in the ground, so that nothing slips under it between two of its posts. */
const WALL_FOOTING_M = 0.5;

/** Crowns between their underside and top over the ground at their middle; walls as one upright box for each straight part. */
export function obstaclesOf(input: TerrainInput, surface: Surface): GroundObstacle[] {
  const out = new Float64Array(3);
  const heightAt = (at: PlanePoint): number => {
    surface.sampleHeight(at.eastM, at.northM, out);
    return out[0] as number;
  };
  const obstacles: GroundObstacle[] = [];
  for (const area of input.areas) {
    const ring = area.polygon[0];
    if (area.kind !== 'tree' || ring === undefined || ring.length < 3) continue;
    const ground = heightAt(centroid(ring));
    const height = area.treeHeightM ?? DEFAULT_TREE_HEIGHT_M;
    const base = area.canopyBaseM ?? Math.min(DEFAULT_CANOPY_BASE_M, height / 2);
    obstacles.push({
      kind: 'tree',
      name: area.name,
      ringM: flatRing(ring),
      bottomM: ground + base,
      topM: ground + Math.max(height, base),
    });
  }
  for (const wall of input.walls) {
    for (let i = 0; i + 1 < wall.points.length; i += 1) {
      const a = wall.points[i] as PlanePoint;
      const b = wall.points[i + 1] as PlanePoint;
      const dx = b.eastM - a.eastM;
      const dy = b.northM - a.northM;
      const length = Math.sqrt(dx * dx + dy * dy);
      if (length === 0) continue;
      const x = (-dy / length) * WALL_HALF_WIDTH_M;
      const y = (dx / length) * WALL_HALF_WIDTH_M;
      const groundA = heightAt(a);
      const groundB = heightAt(b);
      obstacles.push({
        kind: 'wall',
        name: wall.name,
        ringM: Float64Array.of(
          a.eastM - x,
          a.northM - y,
          b.eastM - x,
          b.northM - y,
          b.eastM + x,
          b.northM + y,
          a.eastM + x,
          a.northM + y,
        ),
        bottomM: Math.min(groundA, groundB) - WALL_FOOTING_M,
        topM: Math.max(groundA, groundB) + wall.heightM,
      });
    }
  }
  return obstacles;
}
