import { Inflate, Unzlib } from 'fflate/browser';
import { addDecoder, BaseDecoder, fromArrayBuffer, type GeoTIFFImage } from 'geotiff';
import { InputProblem } from '../../words/inputProblem.ts';
import type { ImportOptions, ImportWarning } from '../import/importPreview.ts';
import { boundedInflate } from '../zip/boundedInflate.ts';
import { emptyFile, MOST_GRID_BYTES, refuseLarge } from '../import/limits.ts';
import { type CoordinateSystem, systemNamed, systemOfEpsg } from './coordinateSystem.ts';
import { verticalUnits } from './verticalUnits.ts';
import { type ElevationRaster, METRES_PER_UNIT, MOST_CELLS } from './elevationRaster.ts';

/** Largest block that is unpacked, bytes: rows of tiles of a survey are well below. */
const MOST_BLOCK_BYTES = 256 * 1024 * 1024;

type TagName = Parameters<ReturnType<GeoTIFFImage['getFileDirectory']>['hasTag']>[0];

interface BlockShape {
  readonly tileWidth: number;
  readonly tileHeight: number;
  readonly bitsPerSample: number | ArrayLike<number>;
  readonly samplesPerPixel?: number;
}

/** Deflated blocks are unpacked into a buffer of the size the header promises, so that a bomb cannot grow beyond it. */
class BoundedDeflate extends BaseDecoder {
  override decodeBlock(buffer: ArrayBufferLike): ArrayBufferLike {
    const { tileWidth, tileHeight, bitsPerSample } = this.parameters as BlockShape;
    const bits = typeof bitsPerSample === 'number' ? bitsPerSample : Math.max(...Array.from(bitsPerSample));
    const samples = typeof bitsPerSample === 'number' ? 1 : bitsPerSample.length;
    const size = tileWidth * tileHeight * samples * Math.ceil(bits / 8);
    if (!(size > 0) || size > MOST_BLOCK_BYTES) throw new RangeError('a block is too large');
    const packed = new Uint8Array(buffer);
    // Some writers leave out zlib's header.
    const zlib = ((packed[0] ?? 0) & 15) === 8 && (((packed[0] ?? 0) << 8) | (packed[1] ?? 0)) % 31 === 0;
    return boundedInflate(zlib ? new Unzlib() : new Inflate(), packed, size).buffer;
  }
}
addDecoder([8, 32946], () => Promise.resolve(BoundedDeflate), undefined, false);

/** Compressions whose blocks have a size that the header fixes. Others are refused: they were made for pictures. */
const compressions: ReadonlySet<number> = new Set([1, 5, 8, 32946, 32773]);

/** GeoTIFF with one height a cell: any number type, striped or tiled, plain, LZW, PackBits or deflate. Throws InputProblem. */
export async function readGeoTiff(
  content: Uint8Array,
  fileName: string,
  options: ImportOptions,
): Promise<ElevationRaster> {
  if (content.length === 0) throw emptyFile(fileName);
  refuseLarge(content.length, fileName, MOST_GRID_BYTES);
  refuseNoTiff(content, fileName);
  let image: GeoTIFFImage;
  try {
    const tiff = await fromArrayBuffer(wholeBuffer(content));
    image = await tiff.getImage(0);
  } catch (error) {
    throw damaged(error, fileName);
  }
  const columns = image.getWidth();
  const rows = image.getHeight();
  if (!(columns >= 2) || !(rows >= 2) || columns * rows > MOST_CELLS)
    throw new InputProblem(
      'grid-size',
      `its header says ${String(columns)} columns and ${String(rows)} rows.`,
      fileName,
      'Cut out the ground of the course first.',
    );
  const directory = image.getFileDirectory();
  const tag = async (name: TagName): Promise<unknown> => {
    try {
      return directory.hasTag(name) ? await directory.loadValue(name) : undefined;
    } catch (error) {
      throw damaged(error, fileName);
    }
  };
  const compression = Number((await tag('Compression')) ?? 1);
  if (!compressions.has(compression))
    throw new InputProblem(
      'grid-compression',
      `its compression (number ${String(compression)}) is not read here.`,
      fileName,
      'Save it again with deflate compression, or none.',
    );
  if (image.getTileWidth() * image.getTileHeight() * image.getBytesPerPixel() > MOST_BLOCK_BYTES)
    throw new InputProblem(
      'grid-size',
      'its blocks are too large.',
      fileName,
      'Save it again as a tiled file.',
    );
  await refuseCutShort(tag, content.length, fileName);

  const keys = (image.getGeoKeys() ?? {}) as Readonly<Record<string, unknown>>;
  const key = (name: string): number => Number(keys[name] ?? NaN);
  const system = systemOf(key, options, fileName);
  const affine = affineOf(
    await numbers(tag('ModelTransformation')),
    await numbers(tag('ModelPixelScale')),
    await numbers(tag('ModelTiepoint')),
    key('GTRasterTypeGeoKey') === 2,
    fileName,
  );
  const metadata = await image.getGDALMetadata(0).catch(() => null);
  const said = (name: string): unknown => metadata?.[name];
  const unitCode = key('VerticalUnitsGeoKey');
  const unitSaid = said('UNITTYPE');
  const unitWord = typeof unitSaid === 'string' ? unitSaid.toLowerCase() : '';
  const stated =
    unitCode === 9001 || /^m(et(er|re)s?)?$/.test(unitWord)
      ? 'm'
      : unitCode === 9003 || /us.*(ft|foot|feet)/.test(unitWord)
        ? 'usft'
        : unitCode === 9002 || /^(ft|foot|feet)$/.test(unitWord)
          ? 'ft'
          : (verticalUnits.get(key('VerticalCSTypeGeoKey')) ?? null);
  const scale = Number(said('SCALE') ?? 1);
  const offset = Number(said('OFFSET') ?? 0);
  const noData = image.getGDALNoData();
  const warnings: ImportWarning[] = [];
  if (image.getSamplesPerPixel() > 1)
    warnings.push({
      code: 'many-bands',
      text: `The file has ${String(image.getSamplesPerPixel())} bands; the first is taken for the height.`,
    });
  return {
    format: 'GeoTIFF',
    columns,
    rows,
    affine,
    system,
    metresPerUnit: METRES_PER_UNIT[options.heightUnit ?? stated ?? 'm'],
    unitStated: options.heightUnit !== undefined || stated !== null,
    positionsInFeet: [9002, 9003].includes(key('ProjLinearUnitsGeoKey')),
    warnings,
    async read({ left, top, right, bottom }) {
      let band: ArrayLike<number>;
      try {
        const read = await image.readRasters({
          window: [left, top, right, bottom],
          samples: [0],
          interleave: true,
        });
        band = read;
      } catch (error) {
        throw damaged(error, fileName);
      }
      // Empty cells are also written as the lowest float, as infinity or as -9999 with no word about it.
      return Float64Array.from(band, (value) =>
        value === noData || !Number.isFinite(value) || Math.abs(value) > 1e6 ? NaN : value * scale + offset,
      );
    },
  };
}

function refuseNoTiff(content: Uint8Array, fileName: string): void {
  const [a = 0, b = 0, c = 0, d = 0] = content;
  const little = a === 0x49 && b === 0x49;
  const big = a === 0x4d && b === 0x4d;
  const version = little ? c | (d << 8) : (c << 8) | d;
  if ((little || big) && (version === 42 || version === 43)) return;
  const swapped = (little || big) && (c === 0 || d === 0) && (c === 42 || d === 42 || c === 43 || d === 43);
  throw new InputProblem(
    swapped ? 'wrong-byte-order' : content.length < 8 ? 'file-truncated' : 'foreign-file',
    swapped
      ? 'its header says one byte order and is written in the other.'
      : content.length < 8
        ? 'the file breaks off before its end.'
        : 'this is not a TIFF file.',
    fileName,
    swapped ? 'Save it again with the program it came from.' : 'Use another copy.',
  );
}

/** Every block must lie in the file: a missing end shows at once, wherever it was cut. */
async function refuseCutShort(
  tag: (name: TagName) => Promise<unknown>,
  size: number,
  fileName: string,
): Promise<void> {
  const tiled = await numbers(tag('TileOffsets'));
  const offsets = tiled ?? (await numbers(tag('StripOffsets'))) ?? [];
  const counts = (await numbers(tag(tiled === null ? 'StripByteCounts' : 'TileByteCounts'))) ?? [];
  if (offsets.length === 0 || offsets.some((offset, i) => offset + (counts[i] ?? 0) > size))
    throw new InputProblem(
      'file-truncated',
      'some of its blocks lie beyond its end.',
      fileName,
      'It was cut short while being copied or saved: use another copy.',
    );
}

async function numbers(value: Promise<unknown>): Promise<readonly number[] | null> {
  const found = await value;
  if (found === undefined || found === null) return null;
  return typeof found === 'number' ? [found] : Array.from(found as ArrayLike<number | bigint>, Number);
}

function systemOf(key: (name: string) => number, options: ImportOptions, fileName: string): CoordinateSystem {
  if (options.crs !== undefined) return systemNamed(options.crs, fileName);
  const projected = key('ProjectedCSTypeGeoKey');
  const geographic = key('GeographicTypeGeoKey');
  const model = key('GTModelTypeGeoKey');
  if (Number.isFinite(projected) && projected !== 32767) return systemOfEpsg(projected, fileName);
  if (projected === 32767 || (model === 1 && !Number.isFinite(projected)))
    throw new InputProblem(
      'unknown-projection',
      'its map projection has no EPSG code.',
      fileName,
      'Say which it is, such as EPSG:32630, or convert it to its UTM zone first.',
    );
  if (Number.isFinite(geographic) && geographic !== 32767) return systemOfEpsg(geographic, fileName);
  throw new InputProblem(
    'missing-projection',
    'nothing in it says which map projection its numbers are in.',
    fileName,
    'Say which it is, such as EPSG:32630.',
  );
}

function affineOf(
  transformation: readonly number[] | null,
  scale: readonly number[] | null,
  tie: readonly number[] | null,
  isPoint: boolean,
  fileName: string,
): ElevationRaster['affine'] {
  let corner: ElevationRaster['affine'] | null = null;
  if (transformation !== null && transformation.length >= 8) {
    const [a = NaN, b = NaN, , d = NaN, e = NaN, f = NaN, , h = NaN] = transformation;
    corner = [d, a, b, h, e, f];
  } else if (scale !== null && tie !== null) {
    const [sx = NaN, sy = NaN] = scale;
    const [i = NaN, j = NaN, , x = NaN, y = NaN] = tie;
    corner = [x - i * sx, sx, 0, y + j * sy, 0, -sy];
  }
  if (
    corner === null ||
    !corner.every(Number.isFinite) ||
    corner[1] * corner[5] - corner[2] * corner[4] === 0
  )
    throw new InputProblem(
      'grid-without-place',
      'it does not say where on the map it lies.',
      fileName,
      'Export it again as a GeoTIFF, or as an ASCII grid.',
    );
  if (isPoint) return corner;
  const [x, xc, xr, y, yc, yr] = corner;
  return [x + (xc + xr) / 2, xc, xr, y + (yc + yr) / 2, yc, yr];
}

function damaged(error: unknown, fileName: string): Error {
  if (error instanceof InputProblem) return error;
  const why = error instanceof Error ? error.message.split('\n')[0] : '';
  return new InputProblem(
    'grid-damaged',
    `it is damaged or cut short (${why ?? ''}).`,
    fileName,
    'Use another copy.',
  );
}

/** The bytes as a buffer of their own, copied only where they are part of a larger one. */
const wholeBuffer = (content: Uint8Array): ArrayBuffer =>
  content.buffer instanceof ArrayBuffer && content.length === content.buffer.byteLength
    ? content.buffer
    : content.slice().buffer;
