import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AtlasDocument, AtlasRecord } from '../../shared/atlas/records.ts';
import { localFrame } from '../../shared/geometry/localFrame.ts';
import { planePoint } from '../../shared/geometry/points.ts';
import type { Plan } from '../../shared/planner/plan.ts';
import { planBall } from '../../shared/planner/planBall.ts';
import { buildScene, type Scene } from '../../shared/planner/scene.ts';
import { groundChange } from '../../shared/terrain/groundChange.ts';
import { meet } from '../../shared/terrain/groundReads.ts';
import { club, complexDocument } from '../unit/planner/complex.ts';

/** Ball a lies south of the green and b west of it; the third one makes the box wide. */
const document = complexDocument({
  heightM: (east, north) => 0.02 * north + 0.0003 * east * east,
  balls: [
    { id: 'a', at: [-2, -19] },
    { id: 'b', at: [-21, 3] },
    { id: 'far', at: [38, 36] },
  ],
  player: { bag: [club('pt', 'putter', 'putter', 3, 0), club('w56', 'wedge', '56° wedge', 56, 12)] },
});
const anchorOf = (): ReturnType<typeof localFrame> => {
  const header = document.records.get('atlas');
  if (header?.type !== 'atlas') throw new Error('the document has a header');
  return localFrame(header.anchor);
};
const frame = anchorOf();

interface Edit {
  readonly kind: 'bunker' | 'heavyRough' | 'bare' | 'penaltyArea' | 'path' | 'tree' | 'wall';
  readonly east: number;
  readonly north: number;
  readonly sizeM: number;
  readonly turn: number;
}

function edited({ records }: AtlasDocument, edit: Edit, id: string): AtlasDocument {
  const corner = (k: number) => {
    const angle = edit.turn + (Math.PI * k) / 2;
    return frame.toLonLat(
      planePoint(edit.east + edit.sizeM * Math.cos(angle), edit.north + edit.sizeM * Math.sin(angle)),
    );
  };
  const record: AtlasRecord =
    edit.kind === 'wall'
      ? { type: 'line', id, kind: 'wall', name: id, positions: [corner(0), corner(2)], heightM: 1.5 }
      : {
          type: 'area',
          id,
          kind: edit.kind,
          name: id,
          rings: [[corner(0), corner(1), corner(2), corner(3)]],
          lipHeightM: edit.kind === 'bunker' ? 0.7 : null,
          treeHeightM: edit.kind === 'tree' ? 7 : null,
          canopyBaseM: edit.kind === 'tree' ? 0.3 : null,
        };
  return { records: new Map([...records, [id, record]]) };
}

const planOf = (scene: Scene, ballId: string): Plan =>
  planBall(scene, { ballId, flagId: 'A', shotsPerOption: 24, seed: 5, effort: 'coarse' });
/** Its key names the whole scene, other areas and all. */
const answerOf = ({ key: _, ...answer }: Plan): Omit<Plan, 'key'> => answer;
const isKept = (before: Scene, after: Scene, plan: Plan): boolean => {
  const change = groundChange(before, after);
  return change !== null && plan.readGround !== undefined && !meet(change, plan.readGround);
};
const RUNS = 16;

describe('a plan of ground that is edited', () => {
  const scene = buildScene(document, 'h1');
  const plan = planOf(scene, 'a');

  it('is kept only where a fresh one is the same to the last bit', () => {
    let kept = 0;
    fc.assert(
      fc.property(
        fc.record({
          kind: fc.constantFrom('bunker', 'heavyRough', 'bare', 'penaltyArea', 'path', 'tree', 'wall'),
          east: fc.double({ min: -36, max: 50, noNaN: true }),
          north: fc.double({ min: -34, max: 50, noNaN: true }),
          sizeM: fc.double({ min: 0.3, max: 4, noNaN: true }),
          turn: fc.double({ min: 0, max: 3, noNaN: true }),
        }),
        (edit) => {
          const after = buildScene(edited(document, edit, 'new'), 'h1', scene);
          if (!isKept(scene, after, plan)) return;
          kept += 1;
          expect(answerOf(planOf(after, 'a'))).toEqual(answerOf(plan));
        },
      ),
      { numRuns: RUNS },
    );
    expect(kept).toBeGreaterThan(0);
  });

  it('is kept by an edit none of its shots comes near, and is not by one among them', () => {
    const west = buildScene(
      edited(document, { kind: 'bunker', east: -17, north: 3, sizeM: 1.5, turn: 0 }, 'new'),
      'h1',
      scene,
    );
    expect(isKept(scene, west, plan)).toBe(true);
    expect(isKept(scene, west, planOf(scene, 'b'))).toBe(false);
  });

  it('looks into a bunker, and is kept where only the edge at its far end moves', () => {
    const withSand = (westM: number, lipHeightM: number, before?: Scene): Scene => {
      const corners: readonly (readonly [number, number])[] = [
        [-2, -15],
        [-2, -13],
        [-19, -13],
        [westM, -15],
        [-12, -15],
      ];
      const sand: AtlasRecord = {
        type: 'area',
        id: 'sand',
        kind: 'bunker',
        name: 'sand',
        rings: [corners.map(([east, north]) => frame.toLonLat(planePoint(east, north)))],
        lipHeightM,
        treeHeightM: null,
        canopyBaseM: null,
      };
      return buildScene({ records: new Map([...document.records, [sand.id, sand]]) }, 'h1', before);
    };
    const before = withSand(-19, 0.7);
    const looked = planOf(before, 'a');
    expect(isKept(before, withSand(-19, 0.8, before), looked)).toBe(false);
    const after = withSand(-18, 0.7, before);
    expect(isKept(before, after, looked)).toBe(true);
    expect(answerOf(planOf(after, 'a'))).toEqual(answerOf(looked));
  });
});
