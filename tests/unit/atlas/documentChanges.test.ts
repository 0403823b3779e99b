import { describe, expect, it } from 'vitest';
import { atlasDocument, sameDocument } from '../../../shared/atlas/document.ts';
import { applyChanges, documentChanges } from '../../../shared/atlas/documentChanges.ts';
import { changeHeader, putRecords, removeRecords } from '../../../shared/atlas/edits.ts';
import { lonLat } from '../../../shared/geometry/points.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';

const spot = { type: 'spotHeight', id: 's1', at: lonLat(-30, 45), heightM: 1, accuracyM: 0.01 } as const;
const hole = {
  type: 'hole',
  id: 'h1',
  label: '1',
  order: 1,
  name: '',
  par: null,
  greenId: 'g1',
  line: null,
} as const;
const ring = [lonLat(-30, 45), lonLat(-29.9999, 45), lonLat(-29.9999, 45.0001)];
const green = {
  type: 'area',
  id: 'g1',
  kind: 'green',
  name: '',
  rings: [ring],
  lipHeightM: null,
  treeHeightM: null,
  canopyBaseM: null,
} as const;
const flag = {
  type: 'holeLocation',
  id: 'f1',
  holeId: 'h1',
  label: 'A',
  name: '',
  at: lonLat(-30, 45),
} as const;
const ball = {
  type: 'ballPosition',
  id: 'b1',
  holeId: 'h1',
  label: '1',
  name: '',
  at: lonLat(-30, 45),
  lie: 'clean',
  coverOverride: null,
} as const;
const choice = {
  type: 'choice',
  id: 'c1',
  ballId: 'b1',
  flagId: 'f1',
  playerId: 'p1',
  optionId: 'putt:putter',
  note: '',
} as const;

const document = atlasDocument([
  { type: 'atlas', id: 'atlas', name: 'X', kind: 'course', placed: true, anchor: lonLat(-30, 45), note: '' },
  hole,
  green,
  flag,
  ball,
  choice,
  spot,
]);

describe('edits and the changes they make', () => {
  it('are told as a handful of records, and replay to an equal document', () => {
    const after = putRecords('measured again', [
      { ...spot, at: lonLat(-30.00000000012345, 45), heightM: -0 },
    ]).apply(document);
    const changes = documentChanges(document, after);
    expect(changes).toEqual([{ id: 's1', record: { ...spot, heightM: 0 } }]);
    expect(sameDocument(applyChanges(document, changes), after)).toBe(true);
    expect(sameDocument(applyChanges(after, documentChanges(after, document)), document)).toBe(true);
  });

  it('take with them what would hang in the air', () => {
    const gone = (id: string) =>
      documentChanges(document, removeRecords('out', [id]).apply(document))
        .map((change) => change.id)
        .sort();
    expect(gone('h1')).toEqual(['b1', 'c1', 'f1', 'h1']);
    expect(gone('f1')).toEqual(['c1', 'f1']);
    expect(gone('g1')).toEqual(['g1', 'h1']);
    expect(gone('atlas')).toEqual([]);
    expect(gone('nobody')).toEqual([]);
  });

  it('refuse what the schema refuses, naming record and member', () => {
    const refused = (act: () => unknown): InputProblem => {
      try {
        act();
      } catch (problem) {
        if (problem instanceof InputProblem) return problem;
        throw problem;
      }
      throw new Error('it was let through');
    };
    expect(refused(() => putRecords('x', [{ ...spot, heightM: NaN }]).apply(document)).place).toBe(
      'spotHeight "s1", heightM',
    );
    expect(refused(() => putRecords('x', [{ ...spot, id: 'h1' }]).apply(document)).code).toBe('duplicate-id');
    expect(refused(() => changeHeader('x', { name: 'n'.repeat(500) }).apply(document)).place).toBe(
      'atlas "atlas", name',
    );
  });
});
