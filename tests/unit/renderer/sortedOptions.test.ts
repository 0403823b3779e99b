import { expect, it } from 'vitest';
import { chanceRows } from '../../../renderer/plan/chanceRows.ts';
import { circumstance } from '../../../renderer/plan/circumstance.ts';
import { simplestThree } from '../../../renderer/plan/simplestThree.ts';
import { sortedOptions } from '../../../renderer/plan/sortedOptions.ts';
import { openStreetMap } from '../../../renderer/store/baseLayerSettings.ts';
import { preferencesFrom } from '../../../renderer/store/preferences.ts';
import { firstSession, sessionFrom } from '../../../renderer/store/session.ts';
import { byLabel } from '../../../shared/atlas/byLabel.ts';
import type { Plan, PlanOption } from '../../../shared/planner/plan.ts';
import { coverCode } from '../../../shared/words/vocabulary.ts';

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

it('finds the simplest three among good answers only, and the nearest where there are too few', () => {
  const answers = (...rows: readonly (readonly [string, number, boolean?])[]): Plan['options'] =>
    rows.map(([id, costStrokes, level = false]) => {
      const [intent = '', technique] = id.split(':');
      // It reads no other members.
      return {
        id,
        technique: intent === 'away' ? technique : intent,
        playAway: intent === 'away',
        costStrokes,
        level,
      } as PlanOption;
    });
  const player = { repertoire: { highSoft: 'learning' }, simplicityMarginStrokes: 0.05 } as const;
  const three = (chosenId: string, options: Plan['options']): readonly string[] =>
    simplestThree({ chosenId, options }, player).map(({ id }) => id);
  // The club level with the advice and the next by strokes, not the other shots that cost a third of a stroke.
  expect(
    three(
      'pitch:60',
      answers(
        ['pitch:60', 0, true],
        ['pitch:56', 0.01, true],
        ['away:pitch:56', 0.02],
        ['pitch:52', 0.09],
        ['highSoft:56', 0.3],
        ['chip:60', 0.42],
      ),
    ),
  ).toEqual(['pitch:60', 'pitch:56', 'pitch:52']);
  // Within the margin the simplest shot counts, each before a second club for one of them, what is learned last.
  expect(
    three(
      'putt:pt',
      answers(
        ['highSoft:60', 0],
        ['pitch:56', 0.01],
        ['chip:52', 0.02],
        ['chip:56', 0.03],
        ['putt:pt', 0.04],
        ['bumpAndRun:8', 0.06],
      ),
    ),
  ).toEqual(['putt:pt', 'chip:52', 'pitch:56']);
  // Among those that are not, a shot being learned stands back by the margin.
  expect(
    three('putt:pt', answers(['putt:pt', 0], ['highSoft:60', 0.3], ['chip:52', 0.34], ['pitch:56', 0.4])),
  ).toEqual(['putt:pt', 'chip:52', 'highSoft:60']);
});

it('tells where the ground becomes too firm for the choice', () => {
  const day = { stimpFt: 9.5, firmness: 0.5 };
  const units = { system: 'yards', paceM: 0.9 } as const;
  const firmer = { what: 'firmness', tried: 0.75, switchAt: 0.6406 } as const;
  expect(circumstance(firmer, day, units)).toBe('Ground firmer than 0.65 of 1, rather firm');
  expect(circumstance({ what: 'firmness', tried: 0.25, switchAt: null }, day, units)).toBe('Softer ground');
  expect(circumstance({ what: 'stimp', tried: 10.5, switchAt: 10.1 }, day, units)).toBe(
    'Green speed over 10\u00a0ft',
  );
});

it('sets every chance of two shots beside each other, and the kinds of trouble that either meets', () => {
  const near = { holed: 0.02, insideThreeFeet: 0.2, insideSixFeet: 0.4, upAndDown: 0.35, offGreen: 0.1 };
  const none = { bunker: 0, penalty: 0, outOfBounds: 0, obstructed: 0, trouble: 0 };
  const inRough = Uint8Array.from([coverCode('green'), coverCode('heavyRough')]);
  const shots = [
    { chances: { ...near, ...none }, finishCodes: inRough },
    { chances: { ...near, ...none, bunker: 0.004 }, finishCodes: new Uint8Array(2) },
  ] as unknown as readonly PlanOption[]; // it reads no other members
  expect(
    chanceRows(shots, { system: 'metres', paceM: 0.9 }).map(({ words, cells }) => [words, ...cells]),
  ).toEqual([
    ['Holed', '2\u00a0%', '2\u00a0%'],
    ['Inside 0.9\u00a0m', '20\u00a0%', '20\u00a0%'],
    ['Inside 1.8\u00a0m', '40\u00a0%', '40\u00a0%'],
    ['Up and down', '35\u00a0%', '35\u00a0%'],
    ['Off the green', '10\u00a0%', '10\u00a0%'],
    ['Bunker', '0\u00a0%', '<1\u00a0%'],
    ['Heavy rough', '50\u00a0%', '0\u00a0%'],
  ]);
});
