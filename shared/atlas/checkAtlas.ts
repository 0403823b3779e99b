import { areaChecks } from './checks/areaChecks.ts';
import { duplicateChecks } from './checks/duplicateChecks.ts';
import { evidenceChecks } from './checks/evidenceChecks.ts';
import type { Finding } from './checks/finding.ts';
import { holeChecks } from './checks/holeChecks.ts';
import { referenceChecks } from './checks/referenceChecks.ts';
import { surveyOf } from './checks/survey.ts';
import type { AtlasDocument } from './records.ts';

const severities = ['error', 'warning', 'note'] as const;

/** Everything worth looking at in a document, errors first. The same document gives the same findings in the same order. */
export function checkAtlas(document: AtlasDocument): readonly Finding[] {
  const survey = surveyOf(document);
  const found = [areaChecks, holeChecks, evidenceChecks, duplicateChecks, referenceChecks].flatMap((check) =>
    check(survey),
  );
  return severities.flatMap((severity) => found.filter((one) => one.severity === severity));
}
