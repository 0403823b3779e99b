import type { Edit } from '../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { TroubleWords } from '../ui/Trouble.tsx';
import type { Sketch } from './sketch.ts';
import { type ToolId, toolOf } from './tools.ts';

export type { Spot } from '../map/surveyStage.ts';

/** What a drawn outline is for. */
export type Purpose =
  | { readonly kind: 'new' }
  | { readonly kind: 'cut' | 'split'; readonly areaId: string }
  | { readonly kind: 'lineOfPlay'; readonly holeId: string };

export type Drag =
  | {
      readonly kind: 'move';
      readonly ids: readonly string[];
      readonly from: PlanePoint;
      readonly to: PlanePoint;
    }
  | {
      readonly kind: 'corner';
      readonly id: string;
      readonly ring: number;
      readonly index: number;
      /** The corner is new: it came out of the middle of a side. */
      readonly isNew: boolean;
      readonly to: PlanePoint;
    }
  | {
      readonly kind: 'turn';
      readonly ids: readonly string[];
      readonly centre: PlanePoint;
      readonly fromDeg: number;
      readonly turnDeg: number;
    }
  /** A frame round what is to be held. */
  | { readonly kind: 'frame'; readonly from: PlanePoint; readonly to: PlanePoint }
  | { readonly kind: 'crown'; readonly centre: PlanePoint; readonly radiusM: number };

/** A point set down that waits for its value to be typed. */
export interface WaitingPoint {
  readonly kind: 'spotHeight' | 'slopeReading';
  readonly at: PlanePoint;
}

export interface HandState {
  readonly tool: ToolId;
  readonly purpose: Purpose;
  readonly heldId: string | null;
  /** What is held together with it. */
  readonly others: readonly string[];
  readonly corner: { readonly ring: number; readonly index: number } | null;
  readonly sketch: Sketch | null;
  /** A measurement that is done, kept to be read until the next one begins. */
  readonly measured: Sketch | null;
  /** Between two places on one outline: along it the shorter or the longer way, or straight. */
  readonly way: 'shorter' | 'longer' | 'straight';
  readonly waiting: WaitingPoint | null;
  readonly drag: Drag | null;
  /** What has been typed for the thing being drawn, by field. */
  readonly typed: Readonly<Record<string, string>>;
  readonly cursor: PlanePoint | null;
  readonly snap: PlanePoint | null;
  readonly pointer: PlanePoint | null;
  readonly trouble: (TroubleWords & { readonly field: string }) | null;
  /** The field or plate that should have the focus now; `turn` grows with every wish. */
  readonly focus: { readonly on: string; readonly turn: number };
}

/** What the hand works on; asked for anew whenever something happens. */
export interface HandContext {
  readonly document: AtlasDocument;
  readonly holeId: string | null;
  readonly units: UnitsPreference;
  readonly readOnly: boolean;
  readonly edit: (edit: Edit) => void;
  readonly newId: () => string;
  readonly middle: () => PlanePoint;
  /** The scale of the plate. */
  readonly metresPerPx: () => number;
}

/** Ground that runs along a line: with a width typed, its middle is drawn and not its outline. */
export const runsAlong = (tool: ToolId): boolean => tool === 'path' || tool === 'penaltyArea';

/** Whether what is drawn is an outline, which ends where it began, or a line. */
export function drawsOutline({
  tool,
  purpose,
  typed,
}: Pick<HandState, 'tool' | 'purpose' | 'typed'>): boolean {
  if (purpose.kind !== 'new') return purpose.kind === 'cut';
  return toolOf(tool).group === 'area' && !(runsAlong(tool) && (typed['width'] ?? '').trim() !== '');
}

/** A hand with nothing in it. */
export const emptyHandState: HandState = {
  tool: 'select',
  purpose: { kind: 'new' },
  heldId: null,
  others: [],
  corner: null,
  sketch: null,
  measured: null,
  way: 'shorter',
  waiting: null,
  drag: null,
  typed: {},
  cursor: null,
  snap: null,
  pointer: null,
  trouble: null,
  focus: { on: '', turn: 0 },
};
