import { useEffect, useMemo, useState } from 'react';
import { AtlasChecks } from '../../shared/atlas/checkAtlas.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { findingsOf, type LookAt } from './lookAt.ts';

/** How long the checks may keep the window at a time, ms. */
const AT_ONCE_MS = 8;
/** They begin when the edit itself has been drawn, ms. */
const AFTER_MS = 40;

const nothing: readonly LookAt[] = [];

/** What the checks say of a document, a little after it has changed: they take turns with everything else in the window. */
export function useFindings(document: AtlasDocument, units: UnitsPreference): readonly LookAt[] {
  const checks = useMemo(() => new AtlasChecks(units), [units]);
  const [found, setFound] = useState(nothing);
  useEffect(() => {
    const steps = checks.steps(document);
    const go = (): void => {
      const until = performance.now() + AT_ONCE_MS;
      do {
        const { done, value } = steps.next();
        if (done !== true) continue;
        const next = findingsOf(document, value);
        // Nothing found before and nothing now is no news.
        setFound((before) => (before.length === 0 && next.length === 0 ? before : next));
        return;
      } while (performance.now() < until);
      timer = setTimeout(go);
    };
    let timer = setTimeout(go, AFTER_MS);
    return () => clearTimeout(timer);
  }, [checks, document]);
  return found;
}
