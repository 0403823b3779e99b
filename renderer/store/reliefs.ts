import { recordsOf } from '../../shared/atlas/document.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import type { ReliefData } from '../../shared/protocol/planning.ts';
import type { PlanningClient } from '../workers/planningClient.ts';
import { preferencesStore } from './preferences.ts';

/** Fall arrows of the plate, metres apart; with large type every second one is left out. */
const ARROW_SPACING_M = 2;

/** Has the ground of a scene drawn: contours, slopes and arrows, in the units and the size of type in use. */
export class Reliefs {
  readonly #client: PlanningClient;
  #key = '';

  constructor(client: PlanningClient) {
    this.#client = client;
  }

  /**
   * @param shown the drawing there is, null for none
   * @param take whether the drawing was of use when it came
   */
  draw(
    document: AtlasDocument,
    scene: Scene,
    shown: ReliefData | null,
    take: (drawn: ReliefData) => boolean,
  ): void {
    const { units, textSize } = preferencesStore.getState();
    const large = textSize === 'large';
    const ridges = recordsOf(document, 'line').flatMap(({ id, kind }) => (kind === 'ridge' ? [id] : []));
    const key = [scene.groundKey, units, textSize, ...ridges].join(' ');
    if (key === this.#key && shown !== null) return;
    this.#client.ask(
      'relief',
      {
        document,
        holeId: scene.hole.id,
        units: { system: units, paceM: 1 },
        arrowSpacingM: ARROW_SPACING_M * (large ? Math.SQRT2 : 1),
        heavyOnly: large,
      },
      {
        answer: (drawn) => {
          if (take(drawn)) this.#key = key;
        },
        problem: () => undefined, // the same ground has just been fitted; the plate stays without its slopes
      },
    );
  }
}
