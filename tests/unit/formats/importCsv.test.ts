import { describe, expect, it } from 'vitest';
import { recordsOf } from '../../../shared/atlas/document.ts';
import { applyImport } from '../../../shared/formats/import/applyImport.ts';
import type { ImportOptions } from '../../../shared/formats/import/importPreview.ts';
import { previewImport } from '../../../shared/formats/import/previewImport.ts';
import { csvText, writeEvidenceCsv } from '../../../shared/formats/export/writeCsv.ts';
import { at, bytes, frame, placedAtlas } from './exchangeFixtures.ts';

const read = async (text: string, options: ImportOptions = {}) => {
  const document = placedAtlas();
  const preview = await previewImport(document, { fileName: 'points.csv', content: bytes(text) }, options);
  return { preview, after: applyImport(document, preview).apply(document) };
};
const heights = (after: Awaited<ReturnType<typeof read>>['after']) =>
  recordsOf(after, 'spotHeight').map((spot) => {
    const { eastM, northM } = frame.toPlane(spot.at);
    return [Number(eastM.toFixed(3)), Number(northM.toFixed(3)), spot.heightM, spot.accuracyM];
  });

describe('lists of points', () => {
  it('guesses columns from headings, in metres from the anchor', async () => {
    const { preview, after } = await read(
      'Point,East (m),North (m),Height,Accuracy\na,3,4,20.5,0.01\nb,-1,2,20.25,\n',
    );
    expect(preview.columns).toEqual({
      ...{
        Point: 'point',
        'East (m)': 'east',
        'North (m)': 'north',
        Height: 'heightM',
        Accuracy: 'accuracy',
      },
    });
    expect(heights(after)).toEqual([
      [3, 4, 20.5, 0.01],
      [-1, 2, 20.25, 0.02],
    ]);
  });

  it('takes the columns it is told, whatever their headings, and no headings at all', async () => {
    const told = await read('q;r;s\n20,5;3,0;4,0\n', { columns: { heightM: 'q', east: 'r', north: 's' } });
    expect(heights(told.after)).toEqual([[3, 4, 20.5, 0.02]]);
    const bare = await read('3 4 20.5\n5 6 20.75\n', {
      columns: { east: 'column 1', north: 'column 2', heightM: 'column 3' },
    });
    expect(heights(bare.after)).toHaveLength(2);
    await expect(read('q,r,s\n1,2,3\n')).rejects.toThrow(/no columns give the place.*q, r, s/);
    await expect(read('x,y,z\n1,2,3\n', { columns: { heightM: 'w' } })).rejects.toThrow(
      /no column "w".*x, y, z/,
    );
    await expect(read('east,north,height\n1,2,tall\n')).rejects.toThrow(/line 2.*"tall" is not a number/);
  });

  it('reads feet, degrees of slope and map projections', async () => {
    const feet = await read('east,north,height_ft\n0,0,100\n');
    expect(heights(feet.after)).toEqual([[0, 0, 30.48, 0.02]]);
    const { after } = await read('east,north,slope_deg,bearing\n0,0,2,190\n1,1,-1,10\n');
    expect(
      recordsOf(after, 'slopeReading').map(({ slopePct, downhillBearingDeg }) => [
        slopePct.toFixed(3),
        downhillBearingDeg,
      ]),
    ).toEqual([
      ['3.492', 190],
      ['1.746', 190],
    ]);
    await expect(read('e,n,z\n460000,5970000,1\n')).rejects.toThrow(/Say which map projection/);
    const utm = await read('e,n,z\n460602.6,5972618.4,12\n', { crs: 'EPSG:32630' });
    expect(recordsOf(utm.after, 'spotHeight')).toHaveLength(1);
  });

  it('reads the evidence it writes', async () => {
    const document = placedAtlas([
      { type: 'spotHeight', id: 's1', at: at(1, 2), heightM: 20.123, accuracyM: 0.004 },
      {
        ...{ type: 'slopeReading', id: 'l1', at: at(3, 4), slopePct: 2.5 },
        ...{ downhillBearingDeg: 200, accuracyPct: 0.2 },
      },
    ]);
    const { after } = await read(writeEvidenceCsv(document));
    expect(heights(after)).toEqual([[1, 2, 20.123, 0.004]]);
    expect(recordsOf(after, 'slopeReading')[0]).toMatchObject({
      ...{ slopePct: 2.5, downhillBearingDeg: 200, accuracyPct: 0.2 },
    });
  });

  it('writes cells that no spreadsheet runs', () => {
    expect(
      csvText(
        ['a', 'b'],
        [
          ['=1+1', 'x "y", z'],
          [-1, null],
        ],
      ),
    ).toBe('a,b\r\n\'=1+1,"x ""y"", z"\r\n-1,\r\n');
  });
});

describe('a level book', () => {
  const book = (lastFore: string): string =>
    [
      'Point,East,North,BS,IS,FS,Height',
      'BM,0,0,1.500,,,20.000',
      'P1,5,0,,1.200,,',
      'P2,10,0,1.300,,0.900,',
      'P3,10,5,,1.000,,',
      `BM,0,0,,,${lastFore},`,
    ].join('\n');

  it('is reduced, its closure told and shared out', async () => {
    // By hand: 20 + 1.5 - 0.9 = 20.6 at P2, + 1.3 = 21.9 instrument, - 1.904 = 19.996: 4 mm low over two set-ups.
    const { preview, after } = await read(book('1.904'));
    expect(preview.format).toBe('CSV level book');
    expect(preview.warnings[0]?.text).toMatch(/2 set-ups closes -4.0 mm out \(7.1 mm would do\)/);
    expect(heights(after).map(([east, north, height]) => [east, north, height])).toEqual([
      [0, 0, 20],
      [5, 0, 20.302],
      [10, 0, 20.602],
      [10, 5, 20.904],
    ]);
  });

  it('is refused where it does not close, or cannot be followed', async () => {
    await expect(read(book('1.950'))).rejects.toThrow(/closes -50 mm out.*level it again/);
    await expect(read('Point,E,N,BS,FS\nA,0,0,,1.2\n')).rejects.toThrow(/begin with a back sight/);
    await expect(read('Point,E,N,BS,FS\nA,0,0,1,\nB,1,1,1,\nC,2,2,,1\n')).rejects.toThrow(
      /line 2.*follows no fore sight/,
    );
  });
});
