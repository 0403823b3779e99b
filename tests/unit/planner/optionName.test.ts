import { expect, it } from 'vitest';
import { optionName, shortOptionName } from '../../../shared/planner/optionName.ts';
import { reasonText } from '../../../shared/planner/reasonText.ts';

it('names a shot by its club: a loft alone is enough, a name stays whole, and a narrow column has it short', () => {
  const named = (
    technique: Parameters<typeof optionName>[0]['technique'],
    clubName: string,
    playAway = false,
  ) => [optionName, shortOptionName].map((name) => name({ technique, clubName, playAway }));
  expect(named('chip', '46° wedge')).toEqual(['Chip 46°', 'Chip 46°']);
  expect(named('pitch', 'pitching wedge')).toEqual(['Pitch pitching wedge', 'Pitch PW']);
  expect(named('bumpAndRun', '26° hybrid')).toEqual(['Bump-and-run 26° hybrid', 'Bump 26° hyb.']);
  expect(named('putt', 'putter')).toEqual(['Putt', 'Putt']);
  expect(named('putt', 'putter', true)).toEqual(['Play away, putter', 'Away putter']);
});

it('says a high soft shot whole inside a sentence', () => {
  const reason = { kind: 'stillLearning', values: { technique: 'highSoft', marginStrokes: 0.1 } } as const;
  expect(reasonText(reason, { system: 'yards', paceM: 0.9 })).toBe(
    'You are still learning the high soft shot: it must save 0.10 before it counts.',
  );
});
