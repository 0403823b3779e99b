import { expect, it } from 'vitest';
import { firstPlayers, playerChoices } from '../../../renderer/plan/playerChoices.ts';
import { firstPlayer } from '../../../renderer/store/newAtlas.ts';

const someone = (id: string, handicap: number) => ({
  ...firstPlayer,
  id,
  name: id,
  level: { kind: 'handicap', handicap } as const,
});

it('sets the players of an atlas beside each other first, and levels that none of them has', () => {
  const [ruth, corin, tam] = [
    someone('ruth', 16),
    { ...someone('corin', 0), level: { kind: 'tour' } as const },
    someone('tam', 30),
  ];
  expect(firstPlayers(playerChoices([corin, ruth, tam], ruth))).toEqual(['ruth', 'corin', 'tam']);
  expect(firstPlayers(playerChoices([corin, ruth], ruth))).toEqual(['ruth', 'corin', 'level:20']);
  expect(firstPlayers(playerChoices([ruth], ruth))).toEqual(['ruth', 'level:tour', 'level:20']);
});
