import { findRecord, recordsOf } from '../../shared/atlas/document.ts';
import { applyChanges } from '../../shared/atlas/documentChanges.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { PlayerAdvice, PlayersRequest } from '../../shared/planner/playersAdvice.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import { flagsOfHole } from '../../shared/planner/sceneRecords.ts';
import type { SurroundsMap } from '../../shared/planner/surroundsMap.ts';
import type { SwitchPoints } from '../../shared/planner/switchPoints.ts';
import type { TriedShot, TryRequest } from '../../shared/planner/tryShot.ts';
import { type PlanQuestion, USUAL_SEED, USUAL_SHOTS } from '../../shared/protocol/planning.ts';
import { slopeAt } from '../../shared/terrain/slope.ts';
import { PlanningClient, type WorkerPort } from '../workers/planningClient.ts';
import { ballsShown } from './ballGroups.ts';
import { byLabel } from './byLabel.ts';
import { Grounds } from './grounds.ts';
import type { PlanCache } from './planCache.ts';
import { troubleOf } from './notices.ts';
import { atlasStore, documentOfAtlas } from './openAtlas.ts';
import { type Derived, derivedStore, type Held } from './planStore.ts';
import { preferencesStore } from './preferences.ts';
import { sessionStore } from './session.ts';

/** Shots for each option where an answer is wanted at once. */
const COARSE_SHOTS = 40;
/** An old answer is struck through only when the new one takes longer than this, ms. */
const STALE_AFTER_MS = 300;
/** Fall arrows of the plate, metres apart; with large type every second one is left out. */
const ARROW_SPACING_M = 2;

/**
 * Keeps the derived state true to the document, the session and the hand: the scene of the hole at once, its fitted
 * ground when a worker has it, a coarse plan as soon as another has it, then the firm one, then quietly the plans of the
 * other balls to the same flag and what would change the choice. Nothing heavy happens in the window itself.
 */
export class Planning {
  readonly #ground: PlanningClient;
  /** Coarse answers only, so that none ever waits behind a thorough one. */
  readonly #quick: PlanningClient;
  readonly #thorough: PlanningClient;
  /** Long work that somebody asked for and watches; started when it is. */
  readonly #spare: PlanningClient;
  /** Other players' plans, so that a map asked for at the same time is not given up for them. */
  readonly #others: PlanningClient;
  readonly #plans: PlanCache;
  readonly #grounds = new Grounds();
  readonly #switchPoints = new Map<string, SwitchPoints>();
  readonly #nextFrame: (run: () => void) => void;
  /** Whether there are cores enough that the firm answer does not slow the coarse one down. */
  readonly #sideBySide = navigator.hardwareConcurrency > 3;
  #document: AtlasDocument | null = null;
  #reliefKey = '';
  #frameAsked = false;
  #staleTimer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    startWorker: () => WorkerPort,
    plans: PlanCache,
    nextFrame: (run: () => void) => void = (run) => requestAnimationFrame(run),
  ) {
    this.#plans = plans;
    this.#nextFrame = nextFrame;
    this.#ground = new PlanningClient(startWorker, false);
    this.#quick = new PlanningClient(startWorker, false);
    this.#thorough = new PlanningClient(startWorker, true);
    this.#spare = new PlanningClient(startWorker, true);
    this.#others = new PlanningClient(startWorker, true);
  }

  start(): void {
    atlasStore.subscribe(() => this.refresh());
    sessionStore.subscribe(() => this.refresh());
    preferencesStore.subscribe(() => this.#drawRelief());
    this.refresh();
  }

  /** The hand has a ball or flag here, or (null) has let go. Moves are taken up once a frame. */
  hold(held: Held | null): void {
    derivedStore.setState({ held });
    if (held === null) {
      this.refresh();
      return;
    }
    if (this.#frameAsked) return;
    this.#frameAsked = true;
    this.#nextFrame(() => {
      this.#frameAsked = false;
      if (derivedStore.getState().held !== null) this.refresh();
    });
  }

  /** Gives up the firm answer under way; the coarse one stays. */
  cancel(): void {
    this.#quick.cancel();
    this.#thorough.cancel();
    derivedStore.setState({ progress: null, switchShare: null });
  }

  /** Plays a shot as somebody wants to; only the newest asked for is answered. */
  tryShot(
    request: TryRequest,
    answer: (tried: TriedShot) => void,
    problem: (words: { readonly message: string; readonly remedy: string }) => void,
  ): void {
    const { scene } = derivedStore.getState();
    if (scene === null || this.#document === null) return;
    this.#quick.ask(
      'tryShot',
      { document: this.#document, holeId: scene.hole.id, request },
      { answer, problem },
    );
  }

  /** The map of the surrounds of a flag, or of several put together. Returns how to give it up. */
  surrounds(
    flagIds: readonly string[],
    listener: {
      readonly progress: (share: number) => void;
      readonly answer: (map: SurroundsMap) => void;
      readonly problem: (words: { readonly message: string; readonly remedy: string }) => void;
    },
  ): () => void {
    const { scene } = derivedStore.getState();
    const document = this.#document;
    if (scene === null || document === null) return () => undefined;
    this.#spare.ask('surrounds', { document, holeId: scene.hole.id, flagIds }, listener);
    return () => this.#spare.cancel();
  }

  /** What several players are advised from the same ball. Returns how to give it up. */
  players(
    request: PlayersRequest,
    listener: {
      readonly progress: (share: number) => void;
      readonly answer: (advice: readonly PlayerAdvice[]) => void;
      readonly problem: (words: { readonly message: string; readonly remedy: string }) => void;
    },
  ): () => void {
    const { scene } = derivedStore.getState();
    const document = this.#document;
    if (scene === null || document === null) return () => undefined;
    this.#others.ask('players', { document, holeId: scene.hole.id, request }, listener);
    return () => this.#others.cancel();
  }

  refresh(): void {
    const before = derivedStore.getState();
    const { open } = atlasStore.getState();
    const { holeId, ballByHole, flagByHole, workspace, ballGroup } = sessionStore.getState();
    // While the ground is being drawn nobody reads a plan, and every stroke would make a new one.
    if (workspace === 'survey') return;
    if (open === null || holeId === null) {
      this.#document = null;
      this.#set({ scene: null, sceneTrouble: null, relief: null, ballId: null, flagId: null, ...nothing });
      return;
    }
    const document = withHeld(documentOfAtlas(open), before.held);
    const balls = ballsShown(
      recordsOf(document, 'ballPosition').filter((ball) => ball.holeId === holeId),
      ballGroup,
    );
    const flags = flagsOfHole(document, holeId);
    const ballId = chosen(balls, ballByHole[holeId]);
    const flagId = chosen(flags, flagByHole[holeId]);
    const sameHole = before.scene?.hole.id === holeId;
    const sameDocument = document === this.#document;
    if (sameDocument && sameHole && ballId === before.ballId && flagId === before.flagId) return;
    this.#document = document;

    let { scene } = before;
    if (!sameDocument || !sameHole || scene === null) {
      try {
        const made = this.#grounds.sceneNow(document, holeId, scene);
        ({ scene } = made);
        this.#set({
          scene,
          sceneTrouble: null,
          groundReady: made.ready,
          ...(sameHole ? {} : { relief: null }),
        });
        if (made.ready) this.#drawRelief();
        else this.#fitGround(document, holeId, scene);
      } catch (error) {
        this.cancel();
        this.#set({ scene: null, sceneTrouble: troubleOf(error), relief: null, ballId, flagId, ...nothing });
        return;
      }
    }
    const samePair = ballId === before.ballId && flagId === before.flagId && sameHole;
    this.#set({ ballId, flagId, ...(samePair ? {} : nothing) });
    if (ballId === null || flagId === null) {
      this.#set(nothing);
      return;
    }
    this.#plan(scene, { document, holeId, ballId, flagId, shotsPerOption: USUAL_SHOTS, seed: USUAL_SEED });
  }

  #fitGround(document: AtlasDocument, holeId: string, { groundKey, input }: Scene): void {
    this.#ground.ask(
      'ground',
      { document, holeId },
      {
        answer: (fit) => {
          this.#grounds.keep(fit, { groundKey, input });
          const now = derivedStore.getState().scene;
          if (now?.groundKey !== groundKey || this.#document === null) return;
          const { scene, ready } = this.#grounds.sceneNow(this.#document, holeId, now);
          this.#set({ scene, groundReady: ready });
          this.#drawRelief();
        },
        problem: (problem) => this.#set({ sceneTrouble: problem, scene: null, ...nothing }),
      },
    );
  }

  /** Asks for the drawing of the ground shown, unless it is there. */
  #drawRelief(): void {
    const { scene, groundReady, relief } = derivedStore.getState();
    const document = this.#document;
    if (scene === null || !groundReady || document === null) return;
    const { units, textSize } = preferencesStore.getState();
    const large = textSize === 'large';
    const ridges = recordsOf(document, 'line').flatMap(({ id, kind }) => (kind === 'ridge' ? [id] : []));
    const key = [scene.groundKey, units, textSize, ...ridges].join(' ');
    if (key === this.#reliefKey && relief !== null) return;
    this.#ground.ask(
      'relief',
      {
        document,
        holeId: scene.hole.id,
        units: { system: units, paceM: 1 },
        arrowSpacingM: ARROW_SPACING_M * (large ? Math.SQRT2 : 1),
        heavyOnly: large,
      },
      {
        answer: (data) => {
          const now = derivedStore.getState().scene;
          if (now?.groundKey !== scene.groundKey) return;
          this.#reliefKey = key;
          const { surface } = now;
          this.#set({
            relief: { ...data, downhillAt: (at) => slopeAt(surface, at).downhillBearingDeg },
          });
        },
        problem: () => undefined, // the same ground has just been fitted; the plate stays without its slopes
      },
    );
  }

  #plan(scene: Scene, question: PlanQuestion): void {
    clearTimeout(this.#staleTimer);
    const known = this.#plans.get(scene, question);
    if (known !== undefined) {
      this.#quick.cancel();
      this.#thorough.cancel();
      this.#set({ plan: known, stage: 'firm', stale: false, progress: null, planTrouble: null });
      this.#afterFirm(scene, question);
      return;
    }
    if (derivedStore.getState().plan !== null) {
      this.#staleTimer = setTimeout(() => derivedStore.setState({ stale: true }), STALE_AFTER_MS);
    }
    this.#set({ switchPoints: null, switchShare: null });
    const failed = (problem: { readonly message: string; readonly remedy: string }): void => {
      clearTimeout(this.#staleTimer);
      this.#set({ ...nothing, planTrouble: problem });
    };
    // Held by the hand: only coarse answers follow it.
    const held = derivedStore.getState().held !== null;
    this.#quick.ask(
      'plan',
      { ...question, shotsPerOption: COARSE_SHOTS, effort: 'coarse' },
      {
        problem: failed,
        answer: (plan) => {
          clearTimeout(this.#staleTimer);
          this.#set({ plan, stage: 'coarse', stale: false, planTrouble: null });
          if (!held && !this.#sideBySide) this.#answerFirmly(scene, question, failed);
        },
      },
    );
    if (held) {
      this.#thorough.cancel();
      derivedStore.setState({ progress: null });
      return;
    }
    derivedStore.setState({ progress: 0 });
    if (this.#sideBySide) this.#answerFirmly(scene, question, failed);
    else this.#thorough.cancel();
  }

  #answerFirmly(
    scene: Scene,
    question: PlanQuestion,
    failed: (problem: { readonly message: string; readonly remedy: string }) => void,
  ): void {
    this.#thorough.ask('plan', question, {
      progress: (fraction) => derivedStore.setState({ progress: fraction }),
      problem: failed,
      answer: (plan) => {
        clearTimeout(this.#staleTimer);
        this.#quick.cancel();
        this.#plans.keep(scene, question, plan);
        this.#set({ plan, stage: 'firm', stale: false, progress: null, planTrouble: null });
        this.#afterFirm(scene, question);
      },
    });
  }

  /** While nothing else is asked: the other flags made ready for coarse answers, the other balls planned. */
  #afterFirm(scene: Scene, question: PlanQuestion): void {
    const { document, holeId, flagId } = question;
    const others = scene.flags.flatMap(({ record }) => (record.id === flagId ? [] : [record.id]));
    this.#quick.ask(
      'warm',
      { document, holeId, flagIds: [flagId, ...others] },
      { answer: () => undefined, problem: () => undefined },
      true,
    );
    this.#prepare(scene, question);
  }

  /** Plans the other balls to the same flag, then finds what would change the choice. */
  #prepare(scene: Scene, question: PlanQuestion): void {
    const shown = ballsShown(
      scene.balls.map(({ record }) => record),
      sessionStore.getState().ballGroup,
    );
    const next = shown.find(
      (record) => this.#plans.get(scene, { ...question, ballId: record.id }) === undefined,
    );
    if (next === undefined) {
      this.#findSwitchPoints(scene, question);
      return;
    }
    const ahead = { ...question, ballId: next.id };
    this.#thorough.ask('plan', ahead, {
      // Shown when that ball is chosen; until then it concerns nobody.
      problem: () => this.#findSwitchPoints(scene, question),
      answer: (plan) => {
        this.#plans.keep(scene, ahead, plan);
        this.#prepare(scene, question);
      },
    });
  }

  #findSwitchPoints(scene: Scene, question: PlanQuestion): void {
    const key = `${scene.key} ${question.ballId} ${question.flagId}`;
    const known = this.#switchPoints.get(key);
    if (known !== undefined) {
      this.#set({ switchPoints: known, switchShare: null });
      return;
    }
    this.#set({ switchShare: 0 });
    this.#thorough.ask('switchPoints', question, {
      progress: (share) => this.#set({ switchShare: share }),
      problem: () => this.#set({ switchShare: null }),
      answer: (found) => {
        this.#switchPoints.set(key, found);
        this.#set({ switchPoints: found, switchShare: null });
      },
    });
  }

  #set(change: Partial<Derived>): void {
    derivedStore.setState(change);
  }
}

const nothing = {
  plan: null,
  stage: 'none',
  stale: false,
  progress: null,
  planTrouble: null,
  switchPoints: null,
  switchShare: null,
} as const satisfies Partial<Derived>;

function chosen(
  records: readonly { readonly id: string; readonly label: string }[],
  wanted: string | undefined,
): string | null {
  return (records.find(({ id }) => id === wanted) ?? records.toSorted(byLabel)[0])?.id ?? null;
}

function withHeld(document: AtlasDocument, held: Held | null): AtlasDocument {
  if (held === null) return document;
  const record =
    findRecord(document, 'ballPosition', held.id) ?? findRecord(document, 'holeLocation', held.id);
  return record === undefined
    ? document
    : applyChanges(document, [{ id: held.id, record: { ...record, at: held.at } }]);
}
