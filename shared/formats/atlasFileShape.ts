import type { AtlasRecord } from '../atlas/records.ts';

/** How each mapped record type meets GeoJSON: the geometry it takes and the record member that carries it. */
export const mappedTypes = {
  area: { geometry: 'Polygon', member: 'rings', optional: ['lipHeightM', 'treeHeightM', 'canopyBaseM'] },
  line: { geometry: 'LineString', member: 'positions', optional: ['heightM'] },
  spotHeight: { geometry: 'Point', member: 'at', optional: [] },
  slopeReading: { geometry: 'Point', member: 'at', optional: [] },
  planeByEye: { geometry: 'Point', member: 'at', optional: [] },
  elevationGrid: { geometry: 'Polygon', member: 'corners', optional: [] },
  holeLocation: { geometry: 'Point', member: 'at', optional: [] },
  ballPosition: { geometry: 'Point', member: 'at', optional: ['coverOverride'] },
  picture: { geometry: 'Polygon', member: 'corners', optional: [] },
  landmark: { geometry: 'Point', member: 'at', optional: [] },
} as const satisfies Partial<Record<AtlasRecord['type'], unknown>>;

export type MappedType = keyof typeof mappedTypes;

/** Record types without a place on the map, and the list in the `swale` member that holds them. */
export const listedTypes = {
  hole: 'holes',
  conditions: 'conditions',
  player: 'players',
  choice: 'choices',
  source: 'sources',
} as const satisfies Partial<Record<AtlasRecord['type'], string>>;

export type ListedType = keyof typeof listedTypes;

export const isMappedType = (type: unknown): type is MappedType =>
  typeof type === 'string' && Object.hasOwn(mappedTypes, type);
