import { expect, it } from 'vitest';
import { planePoint } from '../../../shared/geometry/points.ts';
import { DEPENDS_ON_FLAG, type SurroundsMap } from '../../../shared/planner/surroundsMap.ts';
import { markup } from '../../../shared/plate/markup.ts';
import { paperStyle, screenStyle } from '../../../shared/plate/style.ts';
import { element } from '../../../shared/plate/element.ts';
import { surroundsClasses } from '../../../shared/plate/surroundsClasses.ts';
import { withSurroundsKey } from '../../../shared/plate/surroundsKey.ts';
import { drawSurrounds } from '../../../shared/plate/surroundsLayer.ts';
import { techniques } from '../../../shared/words/vocabulary.ts';

const columns = 20;
const chip = techniques.indexOf('chip');
const pitch = techniques.indexOf('pitch');
/** West half a chip, east half a pitch, the top row out of play; dearer towards the east. */
const map: SurroundsMap = {
  flagId: 'A',
  westM: -10,
  southM: -10,
  cellM: 1,
  columns,
  rows: columns,
  strokes: Float32Array.from({ length: columns * columns }, (_, i) =>
    i >= columns * (columns - 1) ? NaN : 2.4 + (i % columns) * 0.05,
  ),
  simple: Uint8Array.from({ length: columns * columns }, (_, i) =>
    i >= columns * (columns - 1) ? 255 : i % columns < columns / 2 ? chip : pitch,
  ),
  perFlag: [],
};
const view = {
  centre: planePoint(0, 0),
  unitsPerM: 20,
  upBearingDeg: 0,
  box: { x: 0, y: 0, width: 400, height: 400 },
};

it('names each region once and hatches the shots apart, without any colour', () => {
  const drawn = markup(drawSurrounds(view, paperStyle('s'), { map, by: 'simple' }, []));
  expect(drawn.match(/>Chip</g)).toHaveLength(1);
  expect(drawn.match(/>Pitch</g)).toHaveLength(1);
  const classes = surroundsClasses({ map, by: 'simple' });
  expect(classes.map(({ words }) => words)).toEqual(['Chip', 'Pitch']);
  expect(JSON.stringify(classes[0]?.hatch)).not.toBe(JSON.stringify(classes[1]?.hatch));
});

it('puts strokes in five classes, each denser than the one before, that meet end to end', () => {
  const classes = surroundsClasses({ map, by: 'strokes' });
  expect(classes).toHaveLength(5);
  const words = classes.map((one) => one.words);
  expect(words[0]).toMatch(/^under 2\.\d\d$/);
  for (let i = 1; i < 4; i += 1) {
    const [from, to] = (words[i] ?? '').split(' to ');
    expect(words[i + 1]).toMatch(new RegExp(`^${i === 3 ? 'over ' : ''}${to ?? 'x'}`));
    expect(Number(from)).toBeLessThan(Number(to));
  }
  const spacing = classes.slice(1).map(({ hatch }) => hatch[0]?.spacing ?? NaN);
  expect(spacing).toEqual(spacing.toSorted((a, b) => b - a));
});

it('leaves names out where something else stands', () => {
  const everywhere = [{ x: 0, y: 0, width: 400, height: 400 }];
  const drawn = markup(drawSurrounds(view, screenStyle('s'), { map, by: 'simple' }, everywhere));
  expect(drawn).not.toContain('>Chip<');
});

it('has a class of its own, in dots, where the choice depends on the flag, and takes its key into a picture', () => {
  const split = { ...map, simple: map.simple.map((code) => (code === pitch ? DEPENDS_ON_FLAG : code)) };
  const layer = { map: split, by: 'simple' } as const;
  const drawn = markup(drawSurrounds(view, paperStyle('s'), layer, []));
  expect(drawn.match(/>Depends on the flag</g)).toHaveLength(1);
  const classes = surroundsClasses(layer);
  expect(classes.map(({ words }) => words)).toEqual(['Chip', 'Depends on the flag']);
  expect(classes.map(({ hatch }) => hatch[0]?.dotted === true)).toEqual([false, true]);
  const plate = element('svg', { width: 300, height: 200, viewBox: '0 0 300 200' });
  const picture = withSurroundsKey(plate, 'Over every flag', classes, paperStyle('k'));
  expect(Number(picture.attributes['height'])).toBeGreaterThan(220);
  expect(markup(picture)).toMatch(/>Over every flag<.*>Chip<.*stroke-dasharray.*>Depends on the flag</s);
});
