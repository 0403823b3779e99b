import { cos, sin } from '../numeric/elementary.ts';
import type { GrainStrength } from '../words/vocabulary.ts';
import type { TerrainInput } from './terrainInput.ts';

/**
 * Share of the rolling resistance by which grain of each strength pulls a ball: on a green of 10 ft, 5 % is half a foot of
 * speed more one way and less the other, 10 % a foot. Assumed, common practice without a source.
 */
export const grainShares: Readonly<Record<GrainStrength, number>> = { slight: 0.05, strong: 0.1 };

/** The grain of the ground of an input (`Grain` of the ball model): that of the green played to, for every green on it. */
export function grainOf({
  areas,
}: TerrainInput): { readonly eastShare: number; readonly northShare: number } | undefined {
  const grain = areas.find((area) => area.grain !== undefined)?.grain;
  if (grain === undefined) return undefined;
  const share = grainShares[grain.strength];
  const towards = (grain.towardsDeg * Math.PI) / 180;
  return { eastShare: share * sin(towards), northShare: share * cos(towards) };
}
