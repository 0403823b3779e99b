import type { Technique } from '../words/vocabulary.ts';

/**
 * How a technique is played and when it can be: common practice of coaching, marked as such wherever it is
 * shown.
 */
export interface TechniqueRule {
  readonly technique: Technique;
  readonly leanDeg: number;
  readonly attackDeg: number;
  readonly faceOpenDeg: number;
  /** Printed lofts it is usually played with, degrees, both ends included. */
  readonly loftsDeg: readonly [low: number, high: number];
  readonly putter: boolean;
  /** Shortest shot it is worth trying for, metres. */
  readonly minDistanceM: number;
  /** Largest swing it is still played with, as a share of the full one. */
  readonly mostOfFullSwing: number;
  readonly setUp: readonly string[];
}

/** Fuller effects of lean and attack: see the strike model in shared/ball. All values are common practice. */
export const techniqueRules: Readonly<Record<Technique, TechniqueRule>> = {
  putt: {
    technique: 'putt',
    leanDeg: 0,
    attackDeg: 1,
    faceOpenDeg: 0,
    loftsDeg: [0, 8],
    putter: true,
    minDistanceM: 0,
    // A pendulum of the shoulders, not a swing: about 7.5 m/s.
    mostOfFullSwing: 0.2,
    setUp: [
      'Ball a little forward of the middle.',
      'Weight even, eyes over the line.',
      'Swing from the shoulders.',
    ],
  },
  bumpAndRun: {
    technique: 'bumpAndRun',
    leanDeg: 5,
    attackDeg: -3,
    faceOpenDeg: 0,
    loftsDeg: [18, 44],
    putter: false,
    minDistanceM: 4,
    mostOfFullSwing: 0.45,
    setUp: [
      'Ball back of the middle.',
      'Weight on the front foot.',
      'Hands a little ahead, a putting stroke.',
    ],
  },
  chip: {
    technique: 'chip',
    leanDeg: 5,
    attackDeg: -4,
    faceOpenDeg: 0,
    loftsDeg: [40, 61],
    putter: false,
    minDistanceM: 3,
    mostOfFullSwing: 0.33,
    setUp: [
      'Feet close, ball back of the middle.',
      'Weight on the front foot.',
      'Hands ahead, quiet wrists.',
    ],
  },
  pitch: {
    technique: 'pitch',
    leanDeg: 1.5,
    attackDeg: -4,
    faceOpenDeg: 0,
    loftsDeg: [44, 64],
    putter: false,
    minDistanceM: 7,
    mostOfFullSwing: 0.95,
    setUp: [
      'Ball in the middle.',
      'Weight slightly forward.',
      'Let the wrists hinge, finish with the chest to the flag.',
    ],
  },
  splash: {
    technique: 'splash',
    leanDeg: 0,
    attackDeg: -6,
    faceOpenDeg: 12,
    loftsDeg: [40, 64],
    putter: false,
    minDistanceM: 2,
    mostOfFullSwing: 1,
    setUp: [
      'Face open before you grip.',
      'Ball forward, feet dug in.',
      'Enter the sand two inches behind the ball.',
    ],
  },
  explosion: {
    technique: 'explosion',
    leanDeg: 3,
    attackDeg: -9,
    faceOpenDeg: 0,
    loftsDeg: [42, 61],
    putter: false,
    minDistanceM: 2,
    mostOfFullSwing: 1,
    setUp: [
      'Face square.',
      'Ball in the middle, weight well forward.',
      'Down hard behind the ball, expect it to run.',
    ],
  },
  highSoft: {
    technique: 'highSoft',
    leanDeg: 0,
    attackDeg: -3,
    faceOpenDeg: 18,
    loftsDeg: [54, 64],
    putter: false,
    minDistanceM: 5,
    mostOfFullSwing: 1,
    setUp: [
      'Face open before you grip, stance a little open.',
      'Ball forward, weight even.',
      'Long smooth swing, keep the speed up.',
    ],
  },
};
