import { AreaChecks } from './checks/areaChecks.ts';
import { EvidenceChecks } from './checks/evidenceChecks.ts';
import type { Finding } from './checks/finding.ts';
import { holeChecks } from './checks/holeChecks.ts';
import { labelChecks } from './checks/labelChecks.ts';
import { LineChecks } from './checks/lineChecks.ts';
import { PlaceChecks } from './checks/placeChecks.ts';
import { referenceChecks } from './checks/referenceChecks.ts';
import { surveyOf } from './checks/survey.ts';
import { PlaneIndex } from './planeIndex.ts';
import type { UnitsPreference } from '../units/preference.ts';
import type { AtlasDocument } from './records.ts';

const inMetres: UnitsPreference = { system: 'metres', paceM: 1 };
const severities = ['error', 'warning', 'note'] as const;

/**
 * Checks of a document that is being worked on: after an edit only what it touched is looked at again. The findings are
 * those of the document alone, whatever was checked before it.
 */
export class AtlasChecks {
  readonly #index = new PlaneIndex();
  readonly #areas = new AreaChecks();
  readonly #lines = new LineChecks();
  readonly #places = new PlaceChecks();
  readonly #evidence = new EvidenceChecks();
  readonly #units: UnitsPreference;

  /** What it finds is worded in these units. */
  constructor(units: UnitsPreference = inMetres) {
    this.#units = units;
  }

  /** In small steps, so that a window can do other things between them; left unfinished, the next document goes on. */
  *steps(document: AtlasDocument): Generator<undefined, readonly Finding[]> {
    const changes = this.#index.moveTo(document);
    this.#areas.note(this.#index, changes);
    this.#lines.note(this.#index, changes);
    this.#places.note(this.#index, changes);
    this.#evidence.note(this.#index, changes);
    const survey = surveyOf(document, this.#index, this.#units);
    const found = [
      ...(yield* this.#areas.check(survey)),
      ...(yield* this.#lines.check(survey)),
      ...holeChecks(survey),
      ...(yield* this.#places.check(survey)),
      ...(yield* this.#evidence.check(survey)),
      ...labelChecks(survey),
      ...referenceChecks(survey),
    ];
    return severities.flatMap((severity) => found.filter((one) => one.severity === severity));
  }

  check(document: AtlasDocument): readonly Finding[] {
    const steps = this.steps(document);
    for (;;) {
      const { done, value } = steps.next();
      if (done === true) return value;
    }
  }
}

/** Everything worth looking at in a document, errors first, in metres. The same document gives the same findings in the same order. */
export const checkAtlas = (document: AtlasDocument): readonly Finding[] => new AtlasChecks().check(document);
