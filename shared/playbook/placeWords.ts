import { bearingDeg } from '../geometry/bearing.ts';
import type { Scene, SceneBall, SceneFlag } from '../planner/scene.ts';
import { coverWords } from '../words/coverWords.ts';
import { slopeAt } from '../terrain/slope.ts';
import * as format from '../units/format.ts';
import type { UnitsPreference } from '../units/preference.ts';
import type { LieQuality } from '../words/vocabulary.ts';
import { fallWord, flagPlace, flagPlaceText } from './flagPlace.ts';

const lieWords: Readonly<Record<LieQuality, string>> = {
  clean: 'clean',
  sittingUp: 'sitting up',
  sittingDown: 'sitting down',
  buried: 'buried',
  divot: 'in a divot',
};

/** The bearing the last stretch of the hole's line takes into the green; north where no line was drawn. */
export function playBearing(scene: Scene): number {
  const line = (scene.hole.line ?? []).map((at) => scene.frame.toPlane(at));
  const last = line[line.length - 1];
  const before = line[line.length - 2];
  return last === undefined || before === undefined ? 0 : bearingDeg(before, last);
}

/** "light rough, sitting down", and how wet where that is not as the day. */
export function lieText({ record, at }: SceneBall, scene: Scene): string {
  const wet = record.moistureOverride === undefined ? '' : `, ${record.moistureOverride}`;
  return `${coverWords[record.coverOverride ?? scene.ground.coverAt(at)]}, ${lieWords[record.lie]}${wet}`;
}

/** ", slope 3.2 %": the steepest slope of the ground under the ball; empty where it would not be felt. */
export function stanceSlope(ball: SceneBall, scene: Scene): string {
  const slope = slopeAt(scene.surface, ball.at).slopePct;
  return slope < 1 ? '' : `, slope ${format.withUnit(format.slope(slope))}`;
}

/** "11 on, 13 from left" and "falls 1.9 % to the front left", as seen along the line of play. */
export function flagWords(
  scene: Scene,
  flag: SceneFlag,
  units: UnitsPreference,
): { readonly placeText: string; readonly slopeText: string } {
  const playBearingDeg = playBearing(scene);
  const place = flagPlace(scene.green.polygon, flag.at, playBearingDeg);
  const { slopePct, downhillBearingDeg } = slopeAt(scene.surface, flag.at);
  return {
    placeText: place === null ? 'off the green' : flagPlaceText(place, units),
    slopeText:
      slopePct < 0.3
        ? 'level at the flag'
        : `falls ${format.withUnit(format.slope(slopePct))} to the ${fallWord(downhillBearingDeg, playBearingDeg)}`,
  };
}
