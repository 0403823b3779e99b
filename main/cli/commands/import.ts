import { readFile } from 'node:fs/promises';
import { basename, dirname, extname, join } from 'node:path';
import { newAtlas } from '../../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../../shared/atlas/records.ts';
import { readAtlasFile } from '../../../shared/formats/readAtlasFile.ts';
import { applyImport } from '../../../shared/formats/import/applyImport.ts';
import {
  type ImportFile,
  type ImportOptions,
  type ImportPreview,
  recordCount,
} from '../../../shared/formats/import/importPreview.ts';
import { previewImport } from '../../../shared/formats/import/previewImport.ts';
import { type AtlasContent, writeBundle } from '../../../shared/formats/bundle.ts';
import { writeAtlasFile } from '../../../shared/formats/writeAtlasFile.ts';
import { lonLat } from '../../../shared/geometry/points.ts';
import { areaKinds } from '../../../shared/words/vocabulary.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';
import { keepBackup } from '../../files/backups.ts';
import { fileProblem } from '../../files/fileProblem.ts';
import { writeAtomic } from '../../files/writeAtomic.ts';
import { choice } from '../choiceArgument.ts';
import type { Command, CommandIo } from '../command.ts';
import { decimalNumber } from '../decimalArgument.ts';
import { findHole } from '../findRecords.ts';
import { progressLine } from '../progress.ts';
import { readArguments } from '../readArguments.ts';
import { readBundle } from '../readInput.ts';
import { UsageProblem } from '../usageProblem.ts';
import { writeJson } from '../writeJson.ts';

/** Folder beside the atlas in which earlier states are kept. */
const BACKUPS = 'swale-backups';

export const importCommand: Command = {
  name: 'import',
  summary: 'brings map data and elevation into an atlas, after a preview of what it would do',
  help: `swale import: brings map data and elevation into an atlas

Usage: swale import FILE… --into ATLAS [--preview] [--out FILE] [options]

  FILE…            GeoJSON, OpenStreetMap XML, Overpass JSON, GPX, KML, KMZ, CSV of points or a
                   level book, GeoTIFF, ESRI ASCII grid (its .prj is read from beside it);
                   taken in this order
  --into ATLAS     the atlas file; it is replaced whole, or not at all, and what it was is kept
                   beside it in ${BACKUPS}
  --new NAME       begin a new atlas of this name instead of reading ATLAS, which must not exist
  --preview        only tell what would come in, as what, and what is left out
  --out FILE       write the atlas here, leaving ATLAS as it is; a .zip is a bundle with pictures
  --without KEYS   leave out these groups of the preview, such as hole,area:fairway
  --unknown-as K   kind of outlines that say none: ${areaKinds.slice(0, 5).join(', ')},
                   ${areaKinds.slice(5).join(', ')}
  --hole HOLE      of flags and balls that name none, and of the green where just one comes in
  --crs SYSTEM     of a grid or CSV that does not say: EPSG:27700, a PROJ text, or (CSV) local for
                   metres from the anchor
  --height-unit U  of a grid or CSV that does not say: m, ft or usft
  --accuracy M     one standard deviation of the heights, metres
  --margin M       ground of a grid kept about each green, metres; 25 if left out
  --keep-datum     do not shift a grid to the datum of the spot heights on the same ground
  --columns LIST   of a CSV, such as heightM=Z,lon=Long
  --json           the preview as JSON

Example:
  swale import course.osm survey.tif --into my-course.geojson --preview
`,

  async run(args, io) {
    const { positionals, values, flags } = readArguments(args, {
      positionals: ['FILE'],
      manyLast: true,
      values: [
        ...[
          'into',
          'hole',
          'new',
          'out',
          'without',
          'unknown-as',
          'crs',
          'height-unit',
          'accuracy',
          'margin',
          'columns',
        ],
      ],
      needed: ['into'],
      flags: ['preview', 'keep-datum', 'json'],
    });
    const into = values.get('into') ?? '';
    const without = new Set((values.get('without') ?? '').split(',').filter((key) => key !== ''));
    const options = optionsOf(values, flags);
    const starting = await startingAtlas(into, values.get('new'));
    let { document } = starting;
    const label = values.get('hole');
    const holeId = label === undefined ? undefined : findHole(document, label).id;
    const previews: ImportPreview[] = [];
    for (const path of positionals) {
      const preview = await previewed(
        document,
        path,
        { ...options, ...(holeId !== undefined && { holeId }) },
        io,
      );
      previews.push(preview);
      document = applyImport(document, preview, {
        without,
        ...(holeId !== undefined && { greenOfHole: holeId }),
      }).apply(document);
    }
    if (flags.has('json')) writeJson(io.stdout, { previews });
    else for (const preview of previews) io.stdout.write(previewText(preview, without));
    if (flags.has('preview')) return;
    if (previews.every((preview) => recordCount(preview) === 0))
      throw new InputProblem(
        'nothing-to-import',
        'nothing in it can be imported, so the atlas is left as it is.',
        positionals.map((path) => basename(path)).join(', '),
        'The preview says why.',
      );
    const text = writeAtlasFile(document);
    // What is written can be read again, or it is not written.
    readAtlasFile(text, basename(into));
    const target = values.get('out') ?? into;
    const bundled = extname(target).toLowerCase() === '.zip';
    if (!bundled && starting.pictures.size > 0)
      throw new InputProblem(
        'wrong-ending',
        'an atlas with pictures is kept in a bundle.',
        basename(target),
        'Give --out a name that ends in .zip.',
      );
    try {
      await keepBefore(target);
      await writeAtomic(target, bundled ? writeBundle(document, starting.pictures) : text);
    } catch (error) {
      throw fileProblem(error, target);
    }
  },
};

/** Keeps what is about to be replaced; a new file has nothing to keep. */
async function keepBefore(path: string): Promise<void> {
  const before = await readFile(path).catch((error: unknown) => {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  });
  if (before !== null) await keepBackup(join(dirname(path), BACKUPS), path, before);
}

function optionsOf(values: ReadonlyMap<string, string>, flags: ReadonlySet<string>): ImportOptions {
  const crs = values.get('crs');
  const unit = values.get('height-unit');
  const kind = values.get('unknown-as');
  const accuracyM = decimalNumber(values.get('accuracy'), 'accuracy', 0.0001, 10);
  const marginM = decimalNumber(values.get('margin'), 'margin', 0, 200);
  return {
    matchDatum: !flags.has('keep-datum'),
    ...(crs !== undefined && { crs }),
    ...(unit !== undefined && { heightUnit: choice(unit, 'height-unit', ['m', 'ft', 'usft']) }),
    ...(kind !== undefined && { unknownAreaKind: choice(kind, 'unknown-as', areaKinds) }),
    ...(accuracyM !== null && { accuracyM }),
    ...(marginM !== null && { marginM }),
    ...(values.has('columns') && { columns: columnsOf(values.get('columns') ?? '') }),
  };
}

function columnsOf(list: string): Readonly<Record<string, string>> {
  return Object.fromEntries(
    list.split(',').map((pair) => {
      const [role, ...heading] = pair.split('=');
      if (role === undefined || heading.length === 0)
        throw new UsageProblem(`--columns is "${list}": give pairs such as heightM=Z,lon=Long.`);
      return [role.trim(), heading.join('=').trim()];
    }),
  );
}

async function startingAtlas(into: string, name: string | undefined): Promise<AtlasContent> {
  if (name === undefined) return readBundle(into);
  const there = await readFile(into).then(
    () => true,
    () => false,
  );
  if (there)
    throw new InputProblem(
      'file-eexist',
      'it exists already.',
      basename(into),
      'Leave out --new to import into it.',
    );
  const document = newAtlas({
    type: 'atlas',
    id: 'atlas',
    name,
    kind: 'course',
    placed: false,
    anchor: lonLat(-30, 45),
    note: '',
  });
  return { document, pictures: new Map(), damaged: [] };
}

async function previewed(
  document: AtlasDocument,
  path: string,
  options: ImportOptions,
  io: CommandIo,
): Promise<ImportPreview> {
  let content: Uint8Array;
  try {
    content = await readFile(path);
  } catch (error) {
    throw fileProblem(error, path);
  }
  const stem = path.slice(0, path.length - extname(path).length);
  const projection = await readFile(`${stem}.prj`, 'utf8').catch(() => undefined);
  const file: ImportFile = {
    fileName: basename(path),
    content,
    ...(projection !== undefined && { projection }),
  };
  const progress = progressLine(io, `Reading ${basename(path)}, pieces:`);
  try {
    return await previewImport(document, file, {
      ...options,
      progress: (done, of) => progress.show(done, of),
    });
  } finally {
    progress.end();
  }
}

function previewText(preview: ImportPreview, without: ReadonlySet<string>): string {
  const { fileName, format, groups, leftOut, warnings, source, header } = preview;
  const lines = [
    `${fileName}: ${format}`,
    ...groups.map(
      ({ key, title, how, records }) =>
        `  ${without.has(key) ? 'not taken' : 'comes in'}  ${String(records.length)} ${title} (${key}): ${how}`,
    ),
    ...leftOut.map(
      ({ what, why, count, places }) =>
        `  left out  ${String(count)} ${what}: ${why}${places.length === 0 ? '' : ` (${places.join(', ')}${count > places.length ? ', …' : ''})`}`,
    ),
    ...warnings.map(({ text }) => `  note      ${text}`),
    ...(header === null ? [] : ['  note      The atlas takes its place on the earth from this file.']),
    ...(source.attribution === '' && source.licence === ''
      ? ['  source    The file names no owner or licence: make sure you may use it.']
      : [`  source    ${[source.attribution, source.licence].filter((part) => part !== '').join('. ')}`]),
  ];
  return `${lines.join('\n')}\n`;
}
