import { expect, it } from 'vitest';
import { sortedOptions } from '../../../renderer/plan/sortedOptions.ts';
import { openStreetMap } from '../../../renderer/store/baseLayerSettings.ts';
import { preferencesFrom } from '../../../renderer/store/preferences.ts';
import { firstSession, sessionFrom } from '../../../renderer/store/session.ts';
import { byLabel } from '../../../renderer/store/byLabel.ts';
import type { Plan, PlanOption } from '../../../shared/planner/plan.ts';

const option = (id: string, strokes: number, aimRightM: number): PlanOption =>
  // The sort reads no other members.
  ({ id, strokes, aimRightM, carryM: 0, landingOnM: null }) as PlanOption;
const plan = {
  chosenId: 'b',
  options: [option('a', 2.4, -2), option('b', 2.42, 1), option('c', 2.9, 1)],
} as unknown as Plan;
const ids = (options: readonly PlanOption[]): string => options.map(({ id }) => id).join('');

it('puts the advice first, then by strokes, and sorts by a column either way', () => {
  expect(ids(sortedOptions(plan, 'order', false))).toBe('bac');
  expect(ids(sortedOptions(plan, 'strokes', false))).toBe('abc');
  expect(ids(sortedOptions(plan, 'strokes', true))).toBe('cba');
  // Aim by size, whichever side; equal ones stay in the order of the advice. Rolls without a landing are equal.
  expect(ids(sortedOptions(plan, 'aim', false))).toBe('bca');
  expect(ids(sortedOptions(plan, 'landing', true))).toBe('bac');
});

it('reads kept sessions and preferences of any shape', () => {
  expect(sessionFrom(undefined)).toEqual(firstSession);
  expect(sessionFrom({ workspace: 'gone', holeId: 4, ballByHole: { h: 1, i: 'b' }, sort: 'x' })).toEqual({
    ...firstSession,
    ballByHole: { i: 'b' },
  });
  expect(preferencesFrom({ theme: 'dark', units: 'cubits' })).toEqual({
    theme: 'dark',
    textSize: 'usual',
    units: 'yards',
    grid: false,
    baseLayers: [openStreetMap],
  });
  // A source of pictures comes back as it was set; one that could do more than serve pictures does not.
  const own = {
    ...openStreetMap,
    id: 'own',
    name: 'Club photo',
    url: 'https://maps.example.org/{z}/{x}/{y}',
    on: true,
  };
  const script = { ...own, id: 'bad', url: 'javascript:alert(1)//{z}/{x}/{y}' };
  const plain = { ...own, id: 'plain', url: 'http://maps.example.org/{z}/{x}/{y}' };
  expect(preferencesFrom({ baseLayers: [own, script, plain, 7, { id: 3 }] }).baseLayers).toEqual([
    openStreetMap,
    own,
  ]);
});

it('orders labels as a person counts', () => {
  const labels = ['10', '2', '1', 'B', 'A'].map((label) => ({ label }));
  expect(
    labels
      .slice(0, 3)
      .toSorted(byLabel)
      .map(({ label }) => label),
  ).toEqual(['1', '2', '10']);
  expect(
    labels
      .slice(3)
      .toSorted(byLabel)
      .map(({ label }) => label),
  ).toEqual(['A', 'B']);
});
