import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlayerLevel, PlayerRecord } from '../../../shared/atlas/records.ts';
import { availability, lieAllows } from '../../../shared/player/availability.ts';
import { acrossGrass, puttingErrors, puttingSpread } from '../../../shared/player/puttingSpread.ts';
import { nextLevel, skillOf } from '../../../shared/player/skill.ts';
import { strikeSpread } from '../../../shared/player/strikeSpread.ts';
import { swingSize } from '../../../shared/player/swingSize.ts';
import { swingWords } from '../../../shared/player/swingWords.ts';
import { covers, lieQualities, type LieQuality, techniques } from '../../../shared/words/vocabulary.ts';
import { fullBag } from '../planner/complex.ts';

const player: PlayerRecord = {
  type: 'player',
  id: 'p',
  name: 'Player',
  handed: 'right',
  level: { kind: 'tour' },
  bag: fullBag,
  repertoire: {},
  simplicityMarginStrokes: 0.05,
  paceM: 0.9,
  inUse: true,
};

const ladder: readonly PlayerLevel[] = [
  { kind: 'tour' },
  ...[0, 5, 12, 20, 36].map((handicap): PlayerLevel => ({ kind: 'handicap', handicap })),
  { kind: 'beginner' },
];

/** A putt of 5 m on the level at stimp 10. */
const putt = { distanceM: 5, startMps: 2.45, holeMps: 0.71, rollingMps2: 0.549 };

describe('spread', () => {
  it('widens with every level, in putts and strikes', () => {
    const putts = ladder.map((level) => puttingSpread(puttingErrors(level), putt));
    const chips = ladder.map((level) => strikeSpread(level, 'chip', 'fairway', 'clean', 'dry', 15));
    for (let i = 1; i < ladder.length; i += 1) {
      expect(putts[i]?.lineSdDeg).toBeGreaterThan(putts[i - 1]?.lineSdDeg ?? 0);
      expect(putts[i]?.speedSd).toBeGreaterThan(putts[i - 1]?.speedSd ?? 0);
      expect(chips[i]?.speedSd).toBeGreaterThan(chips[i - 1]?.speedSd ?? 0);
      expect(chips[i]?.heavyShare).toBeGreaterThan(chips[i - 1]?.heavyShare ?? 0);
    }
  });

  it('widens with the lie, the technique and the touch asked for', () => {
    const of = (cover: 'fairway' | 'lightRough' | 'heavyRough', distanceM = 15): number =>
      strikeSpread({ kind: 'tour' }, 'pitch', cover, 'clean', 'dry', distanceM).speedSd;
    expect(of('lightRough')).toBeGreaterThan(of('fairway'));
    expect(of('heavyRough')).toBeGreaterThan(of('lightRough'));
    expect(of('fairway', 6)).toBeGreaterThan(of('fairway', 40));
    expect(acrossGrass(0.046, new Map([['lightRough', 0.4] as const]))).toBeGreaterThan(2 * 0.046);
  });

  it('lets a worse lie cost the wildest player too', () => {
    for (const level of ladder) {
      const of = (quality: LieQuality): number =>
        strikeSpread(level, 'bumpAndRun', 'lightRough', quality, 'dry', 15).speedSd;
      expect(of('divot')).toBeGreaterThan(1.2 * of('clean'));
      expect(of('sittingDown')).toBeGreaterThan(of('divot'));
      expect(of('buried')).toBeGreaterThan(of('sittingDown'));
    }
  });

  it('takes the line from a weak player in deep grass, but not all of it', () => {
    for (const level of ladder.slice(1)) {
      for (const technique of ['chip', 'pitch'] as const) {
        const deep = strikeSpread(level, technique, 'heavyRough', 'sittingDown', 'dry', 8).lineSdDeg;
        const turf = strikeSpread(level, technique, 'fairway', 'clean', 'dry', 8).lineSdDeg;
        expect(deep).toBeGreaterThan(1.5 * turf);
        // Two balls in three within a sixth of the way to either side, for all but a beginner.
        if (level.kind === 'handicap') expect(deep).toBeLessThan(16);
      }
    }
  });

  it('punishes every level that tries to meet the ball first out of sand', () => {
    for (const level of ladder) {
      const clean = strikeSpread(level, 'pitch', 'bunker', 'clean', 'dry', 45);
      const turf = strikeSpread(level, 'pitch', 'fairway', 'clean', 'dry', 45);
      expect(clean.heavyShare).toBeGreaterThan(turf.heavyShare + 0.07);
      expect(clean.speedSd).toBeGreaterThan(turf.speedSd);
    }
  });

  it('climbs from beginner to tour', () => {
    let level: PlayerLevel | null = { kind: 'beginner' };
    const factors: number[] = [];
    for (; level !== null; level = nextLevel(level)) factors.push(skillOf(level).shortGame);
    expect([...factors].sort((a, b) => b - a)).toEqual(factors);
    expect(factors.at(-1)).toBe(1);
  });
});

describe('what can be tried', () => {
  it('follows the lie', () => {
    expect(lieAllows('splash', 'fairway', 'clean')).toBe(false);
    expect(lieAllows('putt', 'bunker', 'clean')).toBe(false);
    expect(lieAllows('explosion', 'bunker', 'buried')).toBe(true);
    expect(availability(player, 'green', 'clean', 8).candidates.map((c) => c.technique)).toEqual(['putt']);
    const inSand = (quality: LieQuality): readonly string[] => [
      ...new Set(availability(player, 'bunker', quality, 12).candidates.map((c) => c.technique)),
    ];
    expect(inSand('clean')).toEqual(['chip', 'pitch', 'splash']);
    expect(inSand('buried')).toEqual(['explosion']);
    expect(inSand('sittingDown')).toEqual(['splash', 'explosion']);
  });

  it('never offers what is marked as not mine, nor what the lie forbids unless it says so', () => {
    const marks = fc.dictionary(
      fc.constantFrom(...techniques),
      fc.constantFrom('mine' as const, 'learning' as const, 'notMine' as const),
    );
    fc.assert(
      fc.property(
        fc.subarray([...fullBag]),
        marks,
        fc.constantFrom(...covers),
        fc.constantFrom(...lieQualities),
        fc.double({ min: 0.1, max: 60, noNaN: true }),
        (bag, marked, cover, quality, distanceM) => {
          const repertoire: PlayerRecord['repertoire'] = marked;
          const told = availability({ ...player, bag, repertoire }, cover, quality, distanceM);
          for (const { technique, club, makeshift } of told.candidates) {
            expect(repertoire[technique]).not.toBe('notMine');
            expect(bag).toContain(club);
            if (makeshift !== 'lie') expect(lieAllows(technique, cover, quality)).toBe(true);
            expect(told.leftOut.some((left) => left.technique === technique)).toBe(false);
          }
          if (told.candidates.length > 0) return;
          // Nothing is left: there is no club, the marks are named, or a putter cannot get at the ball.
          for (const technique of told.marked) expect(repertoire[technique]).toBe('notMine');
          if (told.marked.length === 0)
            expect(
              bag.length === 0 || (quality === 'buried' && bag.every(({ kind }) => kind === 'putter')),
            ).toBe(true);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('makes do with one club of any kind', () => {
    for (const only of fullBag) {
      for (const cover of ['green', 'fairway', 'heavyRough', 'bunker'] as const) {
        const { candidates } = availability({ ...player, bag: [only] }, cover, 'clean', 15);
        expect(candidates.length).toBeGreaterThan(0);
      }
    }
    const putterOnly = availability({ ...player, bag: fullBag.slice(0, 1) }, 'heavyRough', 'clean', 15);
    expect(putterOnly.candidates.map(({ technique, makeshift }) => [technique, makeshift])).toEqual([
      ['putt', 'lie'],
    ]);
    // Buried in grass nothing is really played, with any bag: a steep blow with a wedge gets it out.
    const buried = availability(player, 'lightRough', 'buried', 15).candidates;
    expect(new Set(buried.map(({ technique, makeshift }) => `${technique} ${String(makeshift)}`))).toEqual(
      new Set(['pitch lie']),
    );
  });
});

describe('the size of a swing', () => {
  const level: PlayerLevel = { kind: 'handicap', handicap: 18 };
  const carriesM = { smallM: 10, mediumM: 20, longM: 40 };

  it('goes by the measured carry nearest to the one wanted', () => {
    // 12 m/s is a medium swing of this level by speed.
    expect(swingSize(level, 'pitch', 12, undefined, 8)).toBe('medium');
    const by = (carryM: number): string => swingSize(level, 'pitch', 12, carriesM, carryM);
    expect([2, 14.9, 15.1, 29.9, 30.1, 60].map(by)).toEqual([
      'small',
      'small',
      'medium',
      'medium',
      'long',
      'long',
    ]);
  });

  it('is told by where the carry lies among those measured, and by the speed to two figures', () => {
    const bag = [{ id: 'w', name: 'w', kind: 'wedge', loftDeg: 52, bounceDeg: 10, carriesM } as const];
    const words = (technique: 'pitch' | 'splash' | 'putt', carryM: number, clubheadMps: number): string =>
      swingWords({ technique, clubId: 'w', size: 'medium', clubheadMps, carryM }, bag, {
        system: 'metres',
        paceM: 1,
      });
    const { smallM, mediumM, longM } = carriesM;
    const between = `between your small ${smallM.toFixed(1)}\u00a0m and medium ${mediumM.toFixed(1)}\u00a0m`;
    expect(words('pitch', (smallM + mediumM) / 2, 12)).toBe(`Medium swing, clubhead 12\u00a0m/s, ${between}`);
    expect(words('pitch', longM + 5, 18.4)).toBe(
      `Medium swing, clubhead 18\u00a0m/s, over your long ${longM.toFixed(1)}\u00a0m`,
    );
    expect(words('pitch', smallM / 2, 7.24)).toMatch(/clubhead 7\.2\u00a0m\/s, under your small/);
    expect(words('pitch', mediumM + 0.1, 12)).toMatch(/, your medium [\d.]+\u00a0m$/);
    expect(words('splash', mediumM, 20)).toBe('Medium swing, clubhead 20\u00a0m/s');
    expect(words('putt', 0, 2)).toBe('Medium stroke, clubhead 2.0\u00a0m/s');
  });

  it('goes by speed where a carry says nothing: putts, an open face, sand', () => {
    expect(swingSize(level, 'putt', 2, carriesM, 0)).toBe('medium');
    for (const technique of ['highSoft', 'splash', 'explosion'] as const) {
      expect(swingSize(level, technique, 20, carriesM, 8)).toBe('long');
    }
  });
});
