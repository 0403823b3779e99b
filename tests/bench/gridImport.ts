/** Bringing in an elevation grid of two million cells, each format in a process of its own so that its memory can be told. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { atlasDocument } from '../../shared/atlas/document.ts';
import { surfaceGrid } from '../../shared/formats/export/surfaceGrid.ts';
import { writeAsciiGrid } from '../../shared/formats/export/writeAsciiGrid.ts';
import { writeGeoTiff } from '../../shared/formats/export/writeGeoTiff.ts';
import { applyImport } from '../../shared/formats/import/applyImport.ts';
import { previewImport } from '../../shared/formats/import/previewImport.ts';
import { localFrame } from '../../shared/geometry/localFrame.ts';
import { lonLat } from '../../shared/geometry/points.ts';

/** What one import came to. */
export interface GridImport {
  readonly fileName: string;
  readonly cells: number;
  readonly nodes: number;
  /** Processor time, seconds: reading the file, the preview, and the one edit. */
  readonly seconds: number;
  readonly progressSteps: number;
  /** Processor time before the first word of progress, seconds. */
  readonly silentSeconds: number;
  /** Memory of the process before, and at its most, MB. */
  readonly beforeMb: number;
  readonly peakMb: number;
}

const anchor = lonLat(-3.6, 53.9);
const HALF_M = 283;
const CELL_M = 0.4;
const CHILD = '--one-grid';

/** The heaviest case: all of the grid is kept, since nothing is traced yet that it could be clipped to. */
export function gridImports(): readonly GridImport[] {
  const folder = mkdtempSync(join(tmpdir(), 'grid-import-'));
  try {
    const grid = surfaceGrid(
      localFrame(anchor),
      { sampleHeight: (e, n, out) => void (out[0] = 30 + 4 * Math.sin(e / 60) * Math.cos(n / 80)) },
      { westM: -HALF_M, southM: -HALF_M, eastM: HALF_M, northM: HALF_M },
      CELL_M,
    );
    const { text, projection } = writeAsciiGrid(grid);
    writeFileSync(join(folder, 'grid.tif'), writeGeoTiff(grid));
    writeFileSync(join(folder, 'grid.asc'), text);
    writeFileSync(join(folder, 'grid.prj'), projection);
    return ['grid.tif', 'grid.asc'].map((fileName) => {
      const child = spawnSync(
        process.execPath,
        [...process.execArgv, fileURLToPath(import.meta.url), CHILD, folder, fileName],
        { encoding: 'utf8' },
      );
      if (child.status !== 0) throw new Error(child.stderr);
      const { heightsM } = grid;
      return { ...(JSON.parse(child.stdout) as GridImport), fileName, cells: heightsM.length };
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function importOne(folder: string, fileName: string): Promise<Omit<GridImport, 'fileName' | 'cells'>> {
  const document = atlasDocument([
    { type: 'atlas', id: 'atlas', name: 'Bench', kind: 'course', placed: true, anchor, note: '' },
  ]);
  const beforeMb = process.memoryUsage().rss / 1e6;
  const begun = process.cpuUsage();
  const spent = (): number => {
    const { user, system } = process.cpuUsage(begun);
    return (user + system) / 1e6;
  };
  let progressSteps = 0;
  let silentSeconds = NaN;
  const content = new Uint8Array(readFileSync(join(folder, fileName)));
  const projection = readFileSync(join(folder, 'grid.prj'), 'utf8');
  const preview = await previewImport(
    document,
    { fileName, content, projection },
    {
      progress: () => {
        if (progressSteps === 0) silentSeconds = spent();
        progressSteps += 1;
      },
    },
  );
  const after = applyImport(document, preview).apply(document);
  const nodes = [...after.records.values()].reduce(
    (sum, record) => sum + (record.type === 'elevationGrid' ? record.heightsM.length : 0),
    0,
  );
  return {
    nodes,
    seconds: spent(),
    progressSteps,
    silentSeconds,
    beforeMb,
    peakMb: process.resourceUsage().maxRSS / 1e3,
  };
}

const [flag, folder, fileName] = process.argv.slice(2);
if (flag === CHILD && folder !== undefined && fileName !== undefined)
  process.stdout.write(JSON.stringify(await importOne(folder, fileName)));
