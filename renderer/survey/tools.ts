import type { LineRecord } from '../../shared/atlas/records.ts';
import type { AreaKind } from '../../shared/words/vocabulary.ts';

/** Tools of the list, which is the legend too. */
export type Tool =
  | { readonly id: AreaKind; readonly group: 'area'; readonly name: string; readonly key: string }
  | { readonly id: LineRecord['kind']; readonly group: 'line'; readonly name: string; readonly key: string }
  | {
      readonly id: 'spotHeight' | 'slopeReading' | 'holeLocation' | 'ballPosition' | 'landmark';
      readonly group: 'point';
      readonly name: string;
      readonly key: string;
    }
  | {
      readonly id: 'select' | 'several' | 'measure';
      readonly group: 'hand';
      readonly name: string;
      readonly key: string;
    };

/** Capitals are typed with Shift and shown with a plus. */
export const tools: readonly Tool[] = [
  { id: 'green', group: 'area', name: 'Green', key: 'g' },
  { id: 'fringe', group: 'area', name: 'Fringe', key: 'f' },
  { id: 'approach', group: 'area', name: 'Approach', key: 'a' },
  { id: 'fairway', group: 'area', name: 'Fairway', key: 'w' },
  { id: 'lightRough', group: 'area', name: 'Light rough', key: 'r' },
  { id: 'heavyRough', group: 'area', name: 'Heavy rough', key: 'R' },
  { id: 'bare', group: 'area', name: 'Bare ground', key: 'e' },
  { id: 'bunker', group: 'area', name: 'Bunker', key: 'b' },
  { id: 'penaltyArea', group: 'area', name: 'Penalty area', key: 'p' },
  { id: 'outOfBounds', group: 'area', name: 'Out of bounds', key: 'o' },
  { id: 'path', group: 'area', name: 'Path', key: 'h' },
  { id: 'tree', group: 'area', name: 'Tree', key: 't' },
  { id: 'tee', group: 'area', name: 'Tee', key: 'T' },
  { id: 'tierEdge', group: 'line', name: 'Tier edge', key: 'i' },
  { id: 'ridge', group: 'line', name: 'Ridge', key: 'd' },
  { id: 'contour', group: 'line', name: 'Contour', key: 'c' },
  { id: 'wall', group: 'line', name: 'Wall', key: 'l' },
  { id: 'spotHeight', group: 'point', name: 'Spot height', key: '1' },
  { id: 'slopeReading', group: 'point', name: 'Slope reading', key: '2' },
  { id: 'holeLocation', group: 'point', name: 'Hole location', key: '3' },
  { id: 'ballPosition', group: 'point', name: 'Ball position', key: '4' },
  { id: 'landmark', group: 'point', name: 'Landmark', key: '5' },
  { id: 'select', group: 'hand', name: 'Take hold', key: 's' },
  { id: 'several', group: 'hand', name: 'Take several', key: 'S' },
  { id: 'measure', group: 'hand', name: 'Measure', key: 'm' },
];

export type ToolId = Tool['id'];

const byId = new Map(tools.map((tool) => [tool.id, tool]));

export function toolOf(id: ToolId): Tool {
  const tool = byId.get(id);
  if (tool === undefined) throw new RangeError(`no tool "${id}"`);
  return tool;
}

export const toolForKey = (key: string): Tool | undefined => tools.find((tool) => tool.key === key);

/** "+R" for a capital, "G" for the rest. */
export const keyWords = (key: string): string => (/^[A-Z]$/.test(key) ? `+${key}` : key.toUpperCase());
