import { findRecord, recordsOf } from '../../shared/atlas/document.ts';
import { applyChanges } from '../../shared/atlas/documentChanges.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { buildScene, type Scene } from '../../shared/planner/scene.ts';
import { type PlanQuestion, USUAL_SEED, USUAL_SHOTS } from '../../shared/protocol/planning.ts';
import { PlanningClient, type WorkerPort } from '../workers/planningClient.ts';
import { byLabel } from './byLabel.ts';
import type { PlanCache } from './planCache.ts';
import { troubleOf } from './notices.ts';
import { atlasStore, documentOfAtlas } from './openAtlas.ts';
import { type Derived, derivedStore, type Held } from './planStore.ts';
import { sessionStore } from './session.ts';

/** Shots for each option where an answer is wanted at once. */
const COARSE_SHOTS = 40;
/** An old answer is struck through only when the new one takes longer than this, ms. */
const STALE_AFTER_MS = 300;

/**
 * Keeps the derived state true to the document, the session and the hand: the scene of the hole at once, a coarse plan
 * as soon as a worker has it, then the firm one, then quietly the plans of the other balls to the same flag.
 */
export class Planning {
  readonly #quick: PlanningClient;
  readonly #thorough: PlanningClient;
  readonly #plans: PlanCache;
  #document: AtlasDocument | null = null;
  #staleTimer: ReturnType<typeof setTimeout> | undefined;

  constructor(startWorker: () => WorkerPort, plans: PlanCache) {
    this.#plans = plans;
    this.#quick = new PlanningClient(startWorker, false);
    this.#thorough = new PlanningClient(startWorker, true);
  }

  start(): void {
    atlasStore.subscribe(() => this.refresh());
    sessionStore.subscribe(() => this.refresh());
    this.refresh();
  }

  /** The hand has a ball or flag here, or (null) has let go. */
  hold(held: Held | null): void {
    derivedStore.setState({ held });
    this.refresh();
  }

  /** Gives up the firm answer under way; the coarse one stays. */
  cancel(): void {
    this.#quick.cancel();
    this.#thorough.cancel();
    derivedStore.setState({ progress: null });
  }

  refresh(): void {
    const before = derivedStore.getState();
    const { open } = atlasStore.getState();
    const { holeId, ballByHole, flagByHole } = sessionStore.getState();
    if (open === null || holeId === null) {
      this.#document = null;
      this.#set({ scene: null, sceneTrouble: null, ballId: null, flagId: null, plan: null, stage: 'none' });
      return;
    }
    const document = withHeld(documentOfAtlas(open), before.held);
    const balls = recordsOf(document, 'ballPosition').filter((ball) => ball.holeId === holeId);
    const flags = recordsOf(document, 'holeLocation').filter((flag) => flag.holeId === holeId);
    const ballId = chosen(balls, ballByHole[holeId]);
    const flagId = chosen(flags, flagByHole[holeId]);
    const sameHole = before.scene?.hole.id === holeId;
    const sameDocument = document === this.#document;
    if (sameDocument && sameHole && ballId === before.ballId && flagId === before.flagId) return;
    this.#document = document;

    let { scene } = before;
    if (!sameDocument || !sameHole || scene === null) {
      try {
        scene = buildScene(document, holeId, sameHole && scene !== null ? scene : undefined);
        derivedStore.setState({ scene, sceneTrouble: null });
      } catch (error) {
        this.cancel();
        this.#set({ scene: null, sceneTrouble: troubleOf(error), ballId, flagId, plan: null, stage: 'none' });
        return;
      }
    }
    const samePair = ballId === before.ballId && flagId === before.flagId && sameHole;
    if (!samePair) this.#set({ ballId, flagId, plan: null, stage: 'none', planTrouble: null });
    if (ballId === null || flagId === null) {
      this.#set({ plan: null, stage: 'none', progress: null });
      return;
    }
    this.#plan(scene, { document, holeId, ballId, flagId, shotsPerOption: USUAL_SHOTS, seed: USUAL_SEED });
  }

  #plan(scene: Scene, question: PlanQuestion): void {
    clearTimeout(this.#staleTimer);
    const known = this.#plans.get(scene, question);
    if (known !== undefined) {
      this.#quick.cancel();
      this.#thorough.cancel();
      this.#set({ plan: known, stage: 'firm', stale: false, progress: null, planTrouble: null });
      return;
    }
    if (derivedStore.getState().plan !== null) {
      this.#staleTimer = setTimeout(() => derivedStore.setState({ stale: true }), STALE_AFTER_MS);
    }
    const failed = (problem: { readonly message: string; readonly remedy: string }): void => {
      clearTimeout(this.#staleTimer);
      this.#set({ plan: null, stage: 'none', stale: false, progress: null, planTrouble: problem });
    };
    this.#quick.ask(
      { ...question, shotsPerOption: COARSE_SHOTS },
      {
        progress: () => undefined,
        problem: failed,
        plan: (plan) => {
          clearTimeout(this.#staleTimer);
          this.#set({ plan, stage: 'coarse', stale: false, planTrouble: null });
        },
      },
    );
    if (derivedStore.getState().held !== null) {
      this.#thorough.cancel();
      derivedStore.setState({ progress: null });
      return;
    }
    derivedStore.setState({ progress: 0 });
    this.#thorough.ask(question, {
      progress: (fraction) => derivedStore.setState({ progress: fraction }),
      problem: failed,
      plan: (plan) => {
        clearTimeout(this.#staleTimer);
        this.#quick.cancel();
        this.#plans.keep(scene, question, plan);
        this.#set({ plan, stage: 'firm', stale: false, progress: null, planTrouble: null });
        this.#prepare(scene, question);
      },
    });
  }

  /** Plans the other balls to the same flag while nothing else is asked. */
  #prepare(scene: Scene, question: PlanQuestion): void {
    const next = scene.balls.find(
      ({ record }) => this.#plans.get(scene, { ...question, ballId: record.id }) === undefined,
    );
    if (next === undefined) return;
    const ahead = { ...question, ballId: next.record.id };
    this.#thorough.ask(ahead, {
      progress: () => undefined,
      // Shown when that ball is chosen; until then it concerns nobody.
      problem: () => undefined,
      plan: (plan) => {
        this.#plans.keep(scene, ahead, plan);
        this.#prepare(scene, question);
      },
    });
  }

  #set(change: Partial<Derived>): void {
    derivedStore.setState(change);
  }
}

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
