import { Trash2 } from 'lucide-react';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { polygonAreaM2 } from '../../shared/geometry/ring.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { kindWords } from '../../shared/words/coverWords.ts';
import { areaKinds } from '../../shared/words/vocabulary.ts';
import { areasOf, countsOf, countWords } from './group.ts';
import type { Hand } from './hand.ts';
import type { HandState } from './handState.ts';
import { planeShape, type Thing } from './planeShapes.ts';
import { SelectField } from './SelectField.tsx';
import { TurnField } from './TurnField.tsx';
import { areaWordsOf } from './words.ts';

interface HeldGroupProps {
  readonly hand: Hand;
  readonly state: HandState;
  readonly things: readonly Thing[];
  readonly document: AtlasDocument;
  readonly units: UnitsPreference;
  readonly readOnly: boolean;
}

/** Several things held: how many of what, what they have in common, and what can be done with all of them. */
export function HeldGroup(props: HeldGroupProps): React.JSX.Element {
  const { hand, state, things, document, units, readOnly } = props;
  const areas = areasOf(things);
  const allAreas = areas.length === things.length;
  const kinds = [...new Set(areas.map(({ kind }) => kind))];
  const areaM2 = areas.reduce((sum, area) => sum + polygonAreaM2(planeShape(document, area).polygon), 0);
  return (
    <section className="held" aria-label="Held">
      <h2>{things.length} things held</h2>
      <p className="held-facts">{countsOf(things).map(countWords).join(', ')}</p>
      {areas.length > 0 && <p className="held-facts">Area in all {areaWordsOf(areaM2, units)}</p>}
      {allAreas && (
        <SelectField
          label="Kind"
          value={kinds.length === 1 ? (kinds[0] ?? '') : ''}
          options={[
            ...(kinds.length > 1 ? [['', 'several kinds'] as const] : []),
            ...areaKinds.map((kind) => [kind, kindWords[kind]] as const),
          ]}
          readOnly={readOnly}
          choose={(kind) => {
            if (kind !== '') hand.changeKinds(kind);
          }}
        />
      )}
      {state.trouble !== null && (
        <p className="field-trouble" role="alert">
          {state.trouble.message}
        </p>
      )}
      {!readOnly && (
        <div className="held-actions">
          <button type="button" className="link-button" onClick={() => hand.copy()}>
            Copy
          </button>
          {allAreas && (
            <button type="button" className="link-button" onClick={() => hand.join()}>
              Join them
            </button>
          )}
          <TurnField hand={hand} />
          <button type="button" className="link-button" onClick={() => hand.takeOut()}>
            <Trash2 size={15} strokeWidth={1.9} aria-hidden /> Take out
          </button>
        </div>
      )}
      <p className="hint">
        Drag one to move all, or press the arrow keys. A click with <kbd>Shift</kbd> takes one more or lets go
        of it, <kbd>Esc</kbd> lets go of all.
      </p>
    </section>
  );
}
