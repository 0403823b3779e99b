import { recordsOf } from '../../shared/atlas/document.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { movedScene } from '../../shared/planner/movedScene.ts';
import type { PlayerAdvice, PlayersRequest } from '../../shared/planner/playersAdvice.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import type { SurveyDoubt } from '../../shared/planner/surveyDoubt.ts';
import { flagsOfHole } from '../../shared/planner/sceneRecords.ts';
import type { SurroundsMap } from '../../shared/planner/surroundsMap.ts';
import type { TriedShot, TryRequest } from '../../shared/planner/tryShot.ts';
import { type PlanQuestion, USUAL_SEED, USUAL_SHOTS } from '../../shared/protocol/planning.ts';
import { slopeAt } from '../../shared/terrain/slope.ts';
import { PlanningClient } from '../workers/planningClient.ts';
import type { PlanningThreads } from '../workers/planningThread.ts';
import type { Turns } from '../workers/turns.ts';
import { ahead } from './ahead.ts';
import { ballsShown } from './ballGroups.ts';
import { chosenOf } from './chosenOf.ts';
import { Following } from './following.ts';
import type { Grounds } from './grounds.ts';
import type { PlanCache } from './planCache.ts';
import { troubleOf } from './notices.ts';
import { atlasStore, documentOfAtlas } from './openAtlas.ts';
import { type Derived, derivedStore, type Held, noPlan } from './planStore.ts';
import { preferencesStore } from './preferences.ts';
import { Reliefs } from './reliefs.ts';
import { sessionStore } from './session.ts';

/** An old answer is struck through only when the new one takes longer than this, ms. */
const STALE_AFTER_MS = 300;
/** Who walks on within this wants nothing prepared for the ball they left, ms. */
const AHEAD_AFTER_MS = 60;

/** Who watches an answer being worked out. */
interface Watched<T> {
  readonly progress: (share: number) => void;
  readonly answer: (answer: T) => void;
  readonly problem: (words: { readonly message: string; readonly remedy: string }) => void;
}

/**
 * Keeps the derived state true to the document, the session and the hand: the scene of the hole at once, its fitted
 * ground when a worker has it, a coarse plan on the way to the firm one, then quietly the plans of the other balls to the
 * same flag and of the ball to the other flags, and what would change the choice. Rough plans follow what the hand moves.
 * Nothing heavy happens in the window itself.
 */
export class Planning {
  readonly #threads: PlanningThreads;
  readonly #ground: PlanningClient;
  readonly #reliefs: Reliefs;
  readonly #quick: PlanningClient;
  readonly #thorough: PlanningClient;
  /** Long work that somebody asked for and watches; started when it is. */
  readonly #spare: PlanningClient;
  /** Other players' plans, so that a map asked for at the same time is not given up for them. */
  readonly #others: PlanningClient;
  /** The doubt the survey leaves: long, and nothing else should wait for it. */
  readonly #doubts: PlanningClient;
  readonly #plans: PlanCache;
  readonly #grounds: Grounds;
  readonly #following: Following;
  #document: AtlasDocument | null = null;
  /** The scene as the document has it, whatever the hand holds. */
  #still: Scene | null = null;
  #held: Held | null = null;
  /** Whether the ground is being drawn, so that what was under way has been given up. */
  #away = false;
  #aheadTimer: ReturnType<typeof setTimeout> | undefined;
  #staleTimer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    threads: PlanningThreads,
    plans: PlanCache,
    turns: Turns,
    nextFrame: (run: () => void) => void = (run) => requestAnimationFrame(run),
  ) {
    this.#plans = plans;
    this.#grounds = plans.grounds;
    this.#threads = threads;
    const { first, hand, long } = threads;
    this.#ground = new PlanningClient(first, false, turns);
    this.#reliefs = new Reliefs(new PlanningClient(hand, false, turns));
    this.#quick = new PlanningClient(hand, false, turns);
    this.#following = new Following(this.#quick, nextFrame);
    this.#thorough = new PlanningClient(first, true, turns);
    this.#spare = new PlanningClient(long, true, turns);
    this.#others = new PlanningClient(long, true, turns);
    this.#doubts = new PlanningClient(long, true, turns);
  }

  start(): void {
    atlasStore.subscribe(() => this.refresh());
    sessionStore.subscribe(() => this.refresh());
    preferencesStore.subscribe(() => this.#drawRelief());
    this.refresh();
  }

  /** The hand has a ball or flag here, or (null) has let go. What follows from it is shown once a frame. */
  hold(held: Held | null): void {
    const before = this.#held;
    this.#held = held;
    if (held === null) {
      this.#following.letGo();
      // After a drop the document has changed, and with it the plan was asked for.
      if (before !== null) this.refresh(true);
      return;
    }
    const { ballId, flagId, plan, progress, switchShare, held: shown } = derivedStore.getState();
    const document = this.#document;
    const still = this.#still;
    if (document === null || still === null) return;
    clearTimeout(this.#staleTimer);
    clearTimeout(this.#aheadTimer);
    if (progress !== null || switchShare !== null || shown === null) this.#thorough.cancel();
    const planned = ballId !== null && flagId !== null && (held.id === ballId || held.id === flagId);
    this.#following.follow(
      held,
      planned
        ? { document, holeId: still.hole.id, ballId, flagId, shotsPerOption: USUAL_SHOTS, seed: USUAL_SEED }
        : null,
      plan,
      {
        problem: (problem) => this.#set({ ...noPlan, planTrouble: problem }),
        show: (rough) =>
          this.#set({
            held,
            scene: movedScene(still, held),
            progress: null,
            switchPoints: null,
            switchShare: null,
            stopped: false,
            ...(rough !== null && { plan: rough, stage: 'coarse', stale: false, planTrouble: null }),
          }),
      },
    );
  }

  /** Gives up the firm answer under way; the coarse one stays. */
  cancel(): void {
    clearTimeout(this.#staleTimer);
    clearTimeout(this.#aheadTimer);
    this.#quick.cancel();
    this.#thorough.cancel();
    derivedStore.setState({ progress: null, switchShare: null });
  }

  /** The same because somebody no longer wants to wait for it. */
  giveUp(): void {
    const { stage, progress } = derivedStore.getState();
    this.cancel();
    if (progress === null) return;
    // Until the first answer what is shown, if anything, is of another place or day.
    this.#set(stage === 'coarse' ? { stopped: true } : { stale: 'givenUp' });
  }

  /** Plans the ball and flag in hand where there is no firm plan of them, and none on its way. */
  planAgain(): void {
    const { stage, stale, progress } = derivedStore.getState();
    if (progress === null && (stage !== 'firm' || stale !== false)) this.refresh(true);
  }

  /** Plays a shot as somebody wants to; only the newest asked for is answered. */
  tryShot(
    request: TryRequest,
    answer: (tried: TriedShot) => void,
    problem: Watched<TriedShot>['problem'],
  ): void {
    const { scene, held } = derivedStore.getState();
    if (scene === null || this.#document === null) return;
    this.#quick.ask(
      'tryShot',
      { document: this.#document, holeId: scene.hole.id, request, ...(held !== null && { held }) },
      { answer, problem },
    );
  }

  /** The map of the surrounds of a flag, or of several put together. Returns how to give it up. */
  surrounds(flagIds: readonly string[], listener: Watched<SurroundsMap>): () => void {
    const { scene } = derivedStore.getState();
    const document = this.#document;
    if (scene === null || document === null) return () => undefined;
    this.#spare.ask('surrounds', { document, holeId: scene.hole.id, flagIds }, listener);
    return () => this.#spare.cancel();
  }

  /** What several players are advised from the same ball. Returns how to give it up. */
  players(request: PlayersRequest, listener: Watched<readonly PlayerAdvice[]>): () => void {
    const { scene } = derivedStore.getState();
    const document = this.#document;
    if (scene === null || document === null) return () => undefined;
    this.#others.ask('players', { document, holeId: scene.hole.id, request }, listener);
    return () => this.#others.cancel();
  }

  /** What the survey leaves open of a plan, worked out when nothing else is. Returns how to give it up. */
  surveyDoubt(question: PlanQuestion, listener: Watched<SurveyDoubt>): () => void {
    this.#doubts.ask('surveyDoubt', question, listener, 'idle');
    return () => this.#doubts.cancel();
  }

  refresh(again = false): void {
    const before = derivedStore.getState();
    const { open } = atlasStore.getState();
    const { holeId, ballByHole, flagByHole, workspace, ballGroup } = sessionStore.getState();
    // While the ground is being drawn nobody reads a plan, and every stroke would make a new one.
    if (workspace === 'survey') {
      if (!this.#away) this.cancel();
      this.#away = true;
      return;
    }
    const back = this.#away;
    this.#away = false;
    if (open === null || holeId === null) {
      this.cancel();
      this.#document = null;
      this.#still = null;
      this.#set({ scene: null, sceneTrouble: null, relief: null, ballId: null, flagId: null, ...noPlan });
      return;
    }
    const document = documentOfAtlas(open);
    const balls = ballsShown(
      recordsOf(document, 'ballPosition').filter((ball) => ball.holeId === holeId),
      ballGroup,
    );
    const flags = flagsOfHole(document, holeId);
    const ballId = chosenOf(balls, ballByHole[holeId]);
    const flagId = chosenOf(flags, flagByHole[holeId]);
    const sameHole = before.scene?.hole.id === holeId;
    const sameDocument = document === this.#document;
    const samePlaces = ballId === before.ballId && flagId === before.flagId;
    if (!again && !back && sameDocument && sameHole && samePlaces) return;
    this.#document = document;
    if (!sameDocument) this.#held = null;

    let scene = this.#still;
    if (!sameDocument || !sameHole || scene === null) {
      try {
        const made = this.#grounds.sceneNow(document, holeId, scene);
        ({ scene } = made);
        this.#still = scene;
        this.#set({
          scene,
          held: null,
          sceneTrouble: null,
          groundReady: made.ready,
          ...(sameHole ? {} : { relief: null }),
        });
        if (made.ready) this.#drawRelief();
        else this.#fitGround(document, holeId, scene);
      } catch (error) {
        this.cancel();
        this.#still = null;
        this.#set({ scene: null, sceneTrouble: troubleOf(error), relief: null, ballId, flagId, ...noPlan });
        return;
      }
    }
    if (again) this.#set({ scene, held: null });
    // Another player's plan is no answer, not even until this one's comes.
    const samePlayer = before.scene?.player.id === scene.player.id;
    this.#set({ ballId, flagId, ...(samePlaces && sameHole && samePlayer ? {} : noPlan) });
    if (ballId === null || flagId === null) {
      this.cancel();
      this.#set(noPlan);
      return;
    }
    this.#plan(scene, { document, holeId, ballId, flagId, shotsPerOption: USUAL_SHOTS, seed: USUAL_SEED });
  }

  #fitGround(document: AtlasDocument, holeId: string, asked: Scene): void {
    this.#ground.ask(
      'ground',
      { document, holeId },
      {
        answer: (fit) => {
          this.#grounds.keep(fit, asked);
          this.#threads.hand.giveGround(fit);
          this.#threads.long.giveGround(fit);
          const now = this.#still;
          if (now?.groundKey !== asked.groundKey || this.#document === null) return;
          const { scene, ready } = this.#grounds.sceneNow(this.#document, holeId, now);
          this.#still = scene;
          this.#set({
            scene: this.#held === null ? scene : movedScene(scene, this.#held),
            groundReady: ready,
          });
          this.#drawRelief();
        },
        problem: (problem) => this.#set({ sceneTrouble: problem, scene: null, ...noPlan }),
      },
    );
  }

  /** Asks for the drawing of the ground shown, unless it is there. */
  #drawRelief(): void {
    const { scene, groundReady, relief } = derivedStore.getState();
    if (scene === null || !groundReady || this.#document === null) return;
    this.#reliefs.draw(this.#document, scene, relief, (drawn) => {
      const now = derivedStore.getState().scene;
      if (now?.groundKey !== scene.groundKey) return false;
      this.#set({ relief: { ...drawn, downhillAt: (at) => slopeAt(now.surface, at).downhillBearingDeg } });
      return true;
    });
  }

  #plan(scene: Scene, question: PlanQuestion): void {
    clearTimeout(this.#staleTimer);
    clearTimeout(this.#aheadTimer);
    const known = this.#plans.get(scene, question);
    if (known !== undefined) {
      this.#quick.cancel();
      this.#thorough.cancel();
      // What would change the choice on another day is not asked of this one.
      this.#set({ ...noPlan, plan: known, stage: 'firm' });
      this.#afterFirm(scene, question);
      return;
    }
    if (derivedStore.getState().plan !== null) {
      this.#staleTimer = setTimeout(() => this.#set({ stale: 'refreshing' }), STALE_AFTER_MS);
    }
    this.#set({ switchPoints: null, switchShare: null, progress: 0, stale: false, stopped: false });
    this.#quick.cancel();
    this.#thorough.ask('plan', question, {
      progress: (fraction) => this.#set({ progress: fraction }),
      problem: (problem) => {
        clearTimeout(this.#staleTimer);
        this.#set({ ...noPlan, planTrouble: problem });
      },
      early: (plan) => {
        clearTimeout(this.#staleTimer);
        this.#set({ plan, stage: 'coarse', stale: false, planTrouble: null });
      },
      answer: (plan) => {
        clearTimeout(this.#staleTimer);
        this.#plans.keep(scene, question, plan);
        this.#set({ plan, stage: 'firm', stale: false, progress: null, planTrouble: null });
        this.#afterFirm(scene, question);
      },
    });
  }

  /** While nothing else is asked: the flag made ready for rough answers, in a moment the neighbours planned. */
  #afterFirm(scene: Scene, question: PlanQuestion): void {
    const { document, holeId, flagId } = question;
    const nothing = (): void => undefined;
    const warm = { document, holeId, flagIds: [flagId] };
    this.#quick.ask('warm', warm, { answer: nothing, problem: nothing }, 'ahead');
    this.#aheadTimer = setTimeout(() => this.#prepare(scene, question), AHEAD_AFTER_MS);
  }

  /** Plans what the arrow keys lead to, nearest first, then finds what would change the choice. */
  #prepare(scene: Scene, question: PlanQuestion): void {
    const next = ahead(scene, question, sessionStore.getState().ballGroup).find(
      (pair) => this.#plans.get(scene, pair) === undefined,
    );
    if (next === undefined) {
      this.#findSwitchPoints(scene, question);
      return;
    }
    const pair = { ...question, ...next };
    this.#thorough.ask(
      'plan',
      pair,
      {
        // Shown when that ball is chosen; until then it concerns nobody.
        problem: () => this.#findSwitchPoints(scene, question),
        answer: (plan) => {
          this.#plans.keep(scene, pair, plan);
          this.#prepare(scene, question);
        },
      },
      'ahead',
    );
  }

  #findSwitchPoints(scene: Scene, question: PlanQuestion): void {
    const known = this.#plans.switchPoints(scene, question);
    if (known !== undefined) {
      this.#set({ switchPoints: known, switchShare: null });
      return;
    }
    this.#set({ switchShare: 0 });
    this.#thorough.ask(
      'switchPoints',
      question,
      {
        progress: (share) => this.#set({ switchShare: share }),
        problem: () => this.#set({ switchShare: null }),
        answer: (found) => {
          this.#plans.keepSwitchPoints(scene, question, found);
          this.#set({ switchPoints: found, switchShare: null });
        },
      },
      'idle',
    );
  }

  #set(change: Partial<Derived>): void {
    derivedStore.setState(change);
  }
}
