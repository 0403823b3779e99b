import { describe, expect, it } from 'vitest';
import { planePoint } from '../../../shared/geometry/points.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';
import type { AtlasDocument } from '../../../shared/atlas/records.ts';
import { movedScene } from '../../../shared/planner/movedScene.ts';
import { planBall, planSteps } from '../../../shared/planner/planBall.ts';
import { buildScene, type Scene } from '../../../shared/planner/scene.ts';
import type { Plan, PlanOption } from '../../../shared/planner/plan.ts';
import { playersAdviceSteps } from '../../../shared/planner/playersAdvice.ts';
import { reasonText } from '../../../shared/planner/reasonText.ts';
import { club, complexDocument, type ComplexSpec, fullBag } from './complex.ts';

const tilted = (east: number, north: number): number => 0.02 * north + 0.0004 * east * east;
const sceneOf = (spec: ComplexSpec): Scene => buildScene(complexDocument(spec), 'h1');
const planIn = (scene: Scene, ballId = scene.balls[0]?.record.id ?? '', seed = 3): Plan =>
  planBall(scene, { ballId, flagId: 'A', shotsPerOption: 120, seed });
const planOf = (spec: ComplexSpec): Plan => planIn(sceneOf(spec));
/** The same ground, so that its map of the green is made once, for another player. */
const played = (scene: Scene, player: Partial<Scene['player']>): Scene => ({
  ...scene,
  player: { ...scene.player, ...player },
});
const chosen = (plan: Plan): PlanOption => {
  const option = plan.options.find((o) => o.id === plan.chosenId);
  if (option === undefined) throw new Error('the chosen option is not in the plan');
  return option;
};
const lastOf = <T>(steps: Generator<number, T>): T => {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
};
const codeOf = (work: () => unknown): string => {
  try {
    work();
  } catch (problem) {
    if (problem instanceof InputProblem) return problem.code;
    throw problem;
  }
  return 'nothing thrown';
};

describe('a plan', () => {
  const spec: ComplexSpec = { heightM: tilted, balls: [{ id: 'b', at: [-5, -18] }] };
  const usual = sceneOf(spec);

  it('is the same to the last bit for the same seed, on scenes built apart', () => {
    const plan = planIn(usual);
    expect(planOf(spec)).toEqual(plan);
    expect(planIn(usual, 'b', 4).options[0]?.strokes).not.toBe(plan.options[0]?.strokes);
  });

  it('weighs many options, gives each two reasons or more, and prices the safe way out', () => {
    const plan = planIn(usual);
    expect(plan.options.length).toBeGreaterThan(8);
    for (const option of plan.options) {
      const said = option.reasons.map((reason) => reasonText(reason, { system: 'yards', paceM: 0.9 }));
      expect(said.length).toBeGreaterThanOrEqual(2);
      for (const sentence of said) expect(sentence).toMatch(/^[A-Z0-9<>½].*\.$/);
      expect(said.join(' ')).not.toMatch(/NaN|undefined|\{/);
    }
    const safe = plan.options.find((option) => option.id === plan.safeId);
    const price = safe?.reasons.find(({ kind }) => kind === 'safePrice' || kind === 'alsoSafe');
    expect(price?.values['share']).toBe(safe?.chances.trouble);
    expect(plan.options[0]?.costStrokes).toBe(0);
  });

  it('calls shots by their names, and never prices playing away below the same shot at the flag', () => {
    const scene = sceneOf({
      heightM: tilted,
      balls: [
        { id: 'short', at: [-5, -18] },
        { id: 'over sand', at: [21, -9] },
        { id: 'side', at: [-22, 2] },
        { id: 'far', at: [-4, -27] },
      ],
    });
    for (const { record } of scene.balls) {
      const plan = planIn(scene, record.id);
      expect(plan.options.some(({ id }) => id === plan.safeId)).toBe(true);
      for (const option of plan.options) {
        if (option.technique === 'chip') expect(option.carryM).toBeLessThan(12.5);
        if (option.technique === 'pitch') expect(option.carryM).toBeGreaterThan(5);
        if (option.technique === 'putt') expect(option.path.touchdowns).toEqual([]);
        if (!option.playAway) continue;
        const twin = plan.options.find(
          ({ playAway, technique, clubId }) =>
            !playAway && technique === option.technique && clubId === option.clubId,
        );
        expect(option.strokes).toBeGreaterThanOrEqual(twin?.strokes ?? 0);
        expect(option.id).not.toBe(plan.options[0]?.id);
      }
    }
  });

  it('answers coarsely with fewer options, the same every time, and says so', () => {
    const scene = sceneOf(spec);
    const ask = { ballId: 'b', flagId: 'A', shotsPerOption: 200, seed: 3 };
    const coarse = planBall(scene, { ...ask, effort: 'coarse' });
    const early: Plan[] = [];
    const first = lastOf(planSteps(scene, ask, (plan) => early.push(plan)));
    const again = lastOf(planSteps(scene, ask, (plan) => early.push(plan)));
    expect(again).toEqual(first);
    // Without a map of the green the first answer comes from a coarse one, with it from the plan itself.
    expect(early[0]).toEqual(coarse);
    expect([coarse.effort, first.effort]).toEqual(['coarse', 'full']);
    expect(coarse.key).not.toBe(first.key);
    const [, warm] = early;
    expect(warm?.chosenId).toBe(first.chosenId);
    expect(warm?.options.length).toBeLessThanOrEqual(first.options.length);
    // The shots of the early answer are the first of the firm one's.
    for (const { id, finishesM } of warm?.options ?? []) {
      const firm = first.options.find((option) => option.id === id);
      expect(firm?.finishesM.slice(0, finishesM.length)).toEqual(finishesM);
    }
    const longer = first.options.filter(({ finishCodes }) => finishCodes.length === ask.shotsPerOption);
    expect(longer.length).toBeGreaterThan(0);
    const there = first.options.find(({ id }) => id === coarse.chosenId);
    expect(there?.costStrokes).toBeLessThan(chosen(first).costStrokes + 0.03);
  });

  it('follows a ball under the hand among what is in the running and one option in turn', () => {
    const scene = sceneOf(spec);
    const at = scene.frame.toLonLat(planePoint(-4.5, -17.5));
    const moved = movedScene(scene, { id: 'b', at });
    expect(moved.balls[0]?.at.eastM).toBeCloseTo(-4.5, 6);
    expect([moved.ground === scene.ground, moved.key === scene.key]).toEqual([true, false]);
    const among = ['chip:w46', 'chip:w52'];
    const rough = planBall(moved, {
      ...{ ballId: 'b', flagId: 'A', shotsPerOption: 48, seed: 3, effort: 'rough', map: 'light' },
      among,
      scout: 1,
    });
    expect(rough.effort).toBe('rough');
    expect(rough.options.filter(({ id }) => !among.includes(id)).length).toBeLessThanOrEqual(1);
  });

  it('is mirrored for a left-hander on mirrored ground', () => {
    const right = planOf({ ...spec, bunker: false });
    const left = planOf({ ...spec, bunker: false, mirrored: true });
    expect(left.chosenId).toBe(right.chosenId);
    const a = chosen(right);
    const b = chosen(left);
    expect(b.strokes).toBeCloseTo(a.strokes, 3);
    expect(b.aimRightM).toBeCloseTo(-a.aimRightM, 2);
    expect(b.clubheadMps).toBeCloseTo(a.clubheadMps, 3);
  });

  it('takes the simplest technique within the margin, and a smaller margin never costs more', () => {
    const rough: ComplexSpec = {
      heightM: tilted,
      surround: 'lightRough',
      balls: [{ id: 'b', at: [-20, 2] }],
    };
    const scene = sceneOf(rough);
    const strict = planIn(played(scene, { simplicityMarginStrokes: 0 }));
    const easy = planIn(played(scene, { simplicityMarginStrokes: 0.3 }));
    expect(chosen(strict).costStrokes).toBe(0);
    expect(chosen(easy).costStrokes).toBeLessThanOrEqual(0.3);
    expect(['putt', 'bumpAndRun']).toContain(chosen(easy).technique);
  });

  it('leaves out what is not in the repertoire and says so', () => {
    const plan = planIn(played(usual, { repertoire: { putt: 'notMine', bumpAndRun: 'notMine' } }));
    expect(plan.options.some((option) => option.technique === 'putt')).toBe(false);
    expect(plan.leftOut.map(({ id, reason }) => [id, reason.kind])).toContainEqual([
      'putt',
      'notInRepertoire',
    ]);
  });

  it('carries the sand with a lofted shot and would not putt through it', () => {
    const plan = planOf({
      heightM: tilted,
      flags: [{ id: 'A', at: [7, -2] }],
      balls: [{ id: 'b', at: [21, -9] }],
    });
    expect(chosen(plan).landingOnM).toBeGreaterThan(0);
    const putt = plan.options.find((option) => option.technique === 'putt' && !option.playAway);
    expect(putt?.chances.trouble ?? 1).toBeGreaterThan(0.15);
  });

  it('splashes from sand, and explodes from a buried lie', () => {
    const scene = sceneOf({
      heightM: tilted,
      balls: [
        { id: 'clean', at: [16, -6] },
        { id: 'buried', at: [16, -6], lie: 'buried' },
      ],
    });
    const clean = planIn(scene, 'clean');
    expect(chosen(clean).technique).toBe('splash');
    // A chip that must meet the ball first is looked at, and costs too much.
    const least = (technique: string): number =>
      Math.min(...clean.options.filter((o) => o.technique === technique).map((o) => o.strokes));
    expect(least('chip')).toBeGreaterThan(least('splash') + 0.02);
    const buried = planIn(scene, 'buried');
    expect(new Set(buried.options.map((o) => o.technique))).toEqual(new Set(['explosion']));
    expect(chosen(buried).strokes).toBeGreaterThan(chosen(clean).strokes);
  });
});

describe('odd ground and odd bags', () => {
  const level = sceneOf({
    balls: [
      { id: 'near', at: [-4, -17] },
      { id: 'on the lip', at: [3.03, 4] },
      { id: 'on the green', at: [-3, -6] },
      { id: 'in sand', at: [16, -6] },
    ],
  });

  it('holes a ball on the lip', () => {
    const plan = planIn(level, 'on the lip');
    expect(chosen(plan).technique).toBe('putt');
    expect(chosen(plan).strokes).toBeCloseTo(1, 2);
  });

  it('plays with one club of any kind, and putts with an iron where there is no putter', () => {
    const iron = club('i7', 'iron', '7-iron', 32);
    for (const only of [iron, club('pt', 'putter', 'putter', 3), fullBag[7]]) {
      if (only === undefined) continue;
      const plan = planIn(played(level, { bag: [only] }), 'near');
      expect(chosen(plan).clubId).toBe(only.id);
    }
    const noPutter = played(level, { bag: fullBag.filter((c) => c.kind !== 'putter') });
    expect(chosen(planIn(noPutter, 'on the green')).technique).toBe('bumpAndRun');
    expect(chosen(planIn(played(level, { bag: [iron] }), 'in sand')).technique).toBe('splash');
  });

  it('says what is wrong with a question', () => {
    const scene = level;
    const ask = { ballId: 'near', flagId: 'A', shotsPerOption: 50, seed: 1 };
    expect(codeOf(() => planBall(scene, { ...ask, ballId: 'nobody' }))).toBe('unknown-ball');
    expect(codeOf(() => planBall(scene, { ...ask, flagId: 'Z' }))).toBe('unknown-flag');
    expect(codeOf(() => planBall(scene, { ...ask, shotsPerOption: 0.5 }))).toBe('bad-shot-count');
    expect(codeOf(() => planIn(played(scene, { bag: [] })))).toBe('empty-bag');
    const noPutt = played(scene, { repertoire: { putt: 'notMine' } });
    expect(codeOf(() => planIn(noPutt, 'on the green'))).toBe('no-shot-of-ones-own');
    expect(() => planIn(noPutt, 'on the green')).toThrow(/leave: the putt\. Mark it as mine/);
    // Beside a player who has a shot, one who has none is left out.
    const players = [noPutt.player, { ...scene.player, id: 'other' }];
    const both = { ballId: 'on the green', flagId: 'A', shotsPerOption: 50, seed: 1, players };
    expect(lastOf(playersAdviceSteps(scene, both)).map(({ playerId }) => playerId)).toEqual(['other']);
  });
});

describe('a scene', () => {
  const document = complexDocument({ heightM: tilted, balls: [{ id: 'b', at: [-5, -18] }] });
  const without = (keep: (id: string) => boolean): AtlasDocument => ({
    records: new Map([...document.records].filter(([id]) => keep(id))),
  });

  it('refuses a hole it does not know, without a green, a flag or elevation', () => {
    expect(codeOf(() => buildScene(document, 'h9'))).toBe('unknown-hole');
    expect(
      codeOf(() =>
        buildScene(
          without((id) => id !== 'green'),
          'h1',
        ),
      ),
    ).toBe('hole-without-green');
    const flagless = buildScene(
      without((id) => id !== 'A'),
      'h1',
    );
    expect(codeOf(() => planBall(flagless, { ballId: '1', flagId: 'A', shotsPerOption: 8, seed: 1 }))).toBe(
      'hole-without-flag',
    );
    expect(
      codeOf(() =>
        buildScene(
          without((id) => !/^h-?\d+\//.test(id)),
          'h1',
        ),
      ),
    ).toBe('green-without-elevation');
    expect(
      codeOf(() =>
        buildScene(
          without((id) => id !== 'p'),
          'h1',
        ),
      ),
    ).toBe('no-player');
  });

  it('keeps its ground while only a ball moves a little', () => {
    const before = buildScene(document, 'h1');
    const moved = complexDocument({ heightM: tilted, balls: [{ id: 'b', at: [-5.2, -18.1] }] });
    const after = buildScene(moved, 'h1', before);
    expect(after.ground).toBe(before.ground);
    expect(after.key).not.toBe(before.key);
  });
});

it('is the same plan whatever else is worked out between its steps', () => {
  const spec: ComplexSpec = {
    heightM: tilted,
    bunker: true,
    balls: [
      { id: 'a', at: [-3, -17] },
      { id: 'b', at: [12, -13] },
    ],
  };
  const ask = (ballId: string) => ({ ballId, flagId: 'A', shotsPerOption: 40, seed: 3 });
  const alone = ['a', 'b'].map((ballId) => planBall(sceneOf(spec), ask(ballId)));
  // One scene, as two questions to one worker have.
  const scene = sceneOf(spec);
  const running = ['a', 'b'].map((ballId) => ({ ballId, steps: planSteps(scene, ask(ballId)) }));
  const together: Plan[] = [];
  while (running.length > 0) {
    for (const one of [...running]) {
      const step = one.steps.next();
      if (step.done !== true) continue;
      together.push(step.value);
      running.splice(running.indexOf(one), 1);
    }
  }
  expect(together.toSorted((a, b) => a.ballId.localeCompare(b.ballId))).toEqual(alone);
});
