import type { PlanePoint } from '../geometry/points.ts';
import type { LandingLink } from '../plate/landingLinks.ts';
import type { PlaceMark } from '../plate/marks.ts';
import type { ReliefDrawing } from '../plate/relief.ts';
import type { TerrainArea } from '../terrain/terrainInput.ts';
import type { UnitsPreference } from '../units/preference.ts';
import type { Caution } from './cautions.ts';

/** A playbook ready to lay out: every word chosen, every drawing's data at hand, nothing left to compute but places. */
export interface PlaybookModel {
  readonly title: string;
  /** "for Ruth Amble" */
  readonly playerName: string;
  /** "Green speed 9½ ft, medium, dry, wind 4 mph W" */
  readonly dayText: string;
  readonly units: UnitsPreference;
  readonly placed: boolean;
  readonly holes: readonly PlaybookHole[];
  readonly cautions: readonly Caution[];
  /** Owners and licences of the data traced over or brought in, a line each. */
  readonly credits: readonly string[];
}

export interface PlaybookHole {
  readonly id: string;
  readonly label: string;
  readonly name: string;
  /** "Hole 4, par 4, green 27 × 29 yd" */
  readonly subtitle: string;
  /** Bearing of play into the green: up the sheet. */
  readonly playBearingDeg: number;
  readonly areas: readonly TerrainArea[];
  readonly relief: ReliefDrawing;
  readonly greenPoints: readonly PlanePoint[];
  readonly balls: readonly PlaybookBall[];
  readonly flags: readonly PlaybookFlag[];
}

export interface PlaybookBall {
  readonly mark: PlaceMark;
  readonly name: string;
  /** "light rough, sitting down, on 5.2 %" */
  readonly lieText: string;
}

export interface PlaybookFlag {
  readonly mark: PlaceMark;
  readonly name: string;
  /** "11 on, 13 from left" */
  readonly placeText: string;
  /** "falls 1.9 % to the front" */
  readonly slopeText: string;
  readonly rows: readonly PlaybookRow[];
  /** Where one more height would help the lines left open. */
  readonly measure: string | null;
  /** Balls of the hole without a plan for this flag. */
  readonly missing: readonly string[];
}

/** One ball's shot to one flag. */
export interface PlaybookRow {
  readonly ballLabel: string;
  readonly ballName: string;
  /** "light rough, sitting down, 5.2 % uphill", along this line of play. */
  readonly lieText: string;
  readonly shot: string;
  /** A shorter name for the card: "Bump 8-iron", "Away 56°". */
  readonly shotShort: string;
  /** Small, medium or long for this player. */
  readonly swing: string;
  /** "between your small 14 yd and medium 22 yd", or null where the club has no measured carries. */
  readonly amongCarries: string | null;
  readonly carry: string;
  readonly land: string;
  readonly aim: string;
  readonly run: string;
  readonly leave: string;
  readonly upAndDown: string;
  readonly trouble: string;
  readonly why: readonly string[];
  readonly risk: string;
  /** The safe alternative in words, or null where the shot itself is it or none is needed. */
  readonly safe: string | null;
  /** How far the advice holds, where it is what is printed and that is known: "every flag and any usual day". */
  readonly holds: string | null;
  /** Set where the person chose otherwise than advised: what the advice was and what the difference is. */
  readonly choiceDiffers: string | null;
  /** How far the survey leaves the line open, where that matters and has been worked out. */
  readonly open: string | null;
  readonly note: string;
  readonly link: LandingLink;
}
