import type { ConditionsRecord, PlayerRecord } from '../shared/atlas/records.ts';

/** Invented players and days; any likeness is chance. */
export const players: readonly PlayerRecord[] = [
  {
    type: 'player',
    id: 'player-ruth',
    name: 'Ruth Amble',
    handed: 'right',
    level: { kind: 'handicap', handicap: 16 },
    bag: [
      { id: 'putter', kind: 'putter', name: 'putter', loftDeg: 3.5, bounceDeg: 0 },
      { id: 'hybrid', kind: 'hybrid', name: '24° hybrid', loftDeg: 24, bounceDeg: 2 },
      { id: 'iron8', kind: 'iron', name: '8-iron', loftDeg: 37, bounceDeg: 4 },
      { id: 'w46', kind: 'wedge', name: '46° wedge', loftDeg: 46, bounceDeg: 6 },
      { id: 'w52', kind: 'wedge', name: '52° wedge', loftDeg: 52, bounceDeg: 10 },
      { id: 'w56', kind: 'wedge', name: '56° wedge', loftDeg: 56, bounceDeg: 12 },
      { id: 'w60', kind: 'wedge', name: '60° wedge', loftDeg: 60, bounceDeg: 8 },
    ],
    repertoire: { highSoft: 'learning' },
    simplicityMarginStrokes: 0.05,
    paceM: 0.88,
    inUse: true,
  },
  {
    type: 'player',
    id: 'player-corin',
    name: 'Corin Vesper',
    handed: 'right',
    level: { kind: 'tour' },
    bag: [
      { id: 'putter', kind: 'putter', name: 'putter', loftDeg: 3, bounceDeg: 0 },
      { id: 'iron7', kind: 'iron', name: '7-iron', loftDeg: 33, bounceDeg: 4 },
      { id: 'iron9', kind: 'iron', name: '9-iron', loftDeg: 41, bounceDeg: 5 },
      { id: 'w46', kind: 'wedge', name: '46° wedge', loftDeg: 46, bounceDeg: 8 },
      { id: 'w50', kind: 'wedge', name: '50° wedge', loftDeg: 50, bounceDeg: 8 },
      { id: 'w54', kind: 'wedge', name: '54° wedge', loftDeg: 54, bounceDeg: 12 },
      { id: 'w60', kind: 'wedge', name: '60° wedge', loftDeg: 60, bounceDeg: 6 },
    ],
    repertoire: {},
    simplicityMarginStrokes: 0.03,
    paceM: 0.95,
    inUse: false,
  },
  {
    type: 'player',
    id: 'player-tam',
    name: 'Tam Pettle',
    handed: 'left',
    level: { kind: 'beginner' },
    bag: [
      { id: 'putter', kind: 'putter', name: 'putter', loftDeg: 4, bounceDeg: 0 },
      { id: 'hybrid', kind: 'hybrid', name: '26° hybrid', loftDeg: 26, bounceDeg: 2 },
      { id: 'iron8', kind: 'iron', name: '8-iron', loftDeg: 38, bounceDeg: 5 },
      { id: 'w46', kind: 'wedge', name: 'pitching wedge', loftDeg: 46, bounceDeg: 6 },
      { id: 'w52', kind: 'wedge', name: 'gap wedge', loftDeg: 52, bounceDeg: 8 },
      { id: 'w56', kind: 'wedge', name: 'sand wedge', loftDeg: 56, bounceDeg: 14 },
    ],
    repertoire: { highSoft: 'notMine', explosion: 'learning' },
    simplicityMarginStrokes: 0.08,
    paceM: 0.78,
    inUse: false,
  },
];

const day = (
  id: string,
  name: string,
  stimpFt: number,
  firmness: number,
  moisture: ConditionsRecord['moisture'],
  windMps: number,
  windFromDeg: number,
): ConditionsRecord => ({
  type: 'conditions',
  id,
  name,
  stimpFt,
  firmness,
  moisture,
  windMps,
  windFromDeg,
  inUse: id === 'day-usual',
});

export const days: readonly ConditionsRecord[] = [
  day('day-dew', 'Dewy morning', 8.5, 0.35, 'wet', 0.5, 90),
  day('day-soft', 'Soft', 9, 0.15, 'damp', 2, 225),
  day('day-usual', 'Usual', 9.5, 0.5, 'dry', 1.8, 270),
  day('day-firm', 'Firm and fast', 11.5, 0.85, 'dry', 4.5, 250),
];
