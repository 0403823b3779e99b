import { spawn, spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../helpers/temporaryFolder.ts';

const root = resolve(import.meta.dirname, '..', '..');
const sample = join(root, 'sample-course', 'ossel-down.geojson');
/** One ball and one flag. */
const small = join(root, 'tests', 'fixtures', 'format-1.geojson');
const fromSource = ['--import', 'tsx', join(root, 'main', 'cli', 'swale.ts')];
const built = [join(root, 'out', 'main', 'cli.js')];

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

function swale(
  program: readonly string[],
  args: readonly string[],
  env: NodeJS.ProcessEnv = {},
): Promise<Ended> {
  return new Promise((done) => {
    const child = spawn(process.execPath, [...program, ...args], {
      cwd: root,
      env: { ...process.env, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let [out, err] = ['', ''];
    child.stdout.setEncoding('utf8').on('data', (part: string) => (out += part));
    child.stderr.setEncoding('utf8').on('data', (part: string) => (err += part));
    child.on('close', (code) => done({ code, out, err }));
  });
}

describe('the command line as a program', () => {
  it('gives the same plan from source and built, to the last digit', async () => {
    const asked = ['plan', sample, '--hole', '4', '--ball', '2', '--flag', 'C', '--shots', '60', '--json'];
    const [source, bundle] = [await swale(fromSource, asked), await swale(built, asked)];
    expect(source.err).toBe('');
    expect(source.out.length).toBeGreaterThan(1000);
    // By line, so that a difference shows itself and not two whole plans.
    const [ours, theirs] = [source.out.split('\n'), bundle.out.split('\n')];
    expect(theirs.find((line, i) => line !== ours[i])).toBeUndefined();
    expect(theirs.length).toBe(ours.length);
  });

  it('ends with the codes it promises', async () => {
    expect(await swale(built, ['check', sample])).toMatchObject({ code: 0, err: '' });
    expect(await swale(built, ['check', join(root, 'LICENSE')])).toMatchObject({ code: 1, out: '' });
    expect(await swale(built, ['fly'])).toMatchObject({ code: 2, out: '' });
  });

  it('does not mind a reader that has seen enough', () => {
    const piped = spawnSync(
      'sh',
      ['-c', `"${process.execPath}" "${built.join('')}" check "${sample}" --json | head -c 1`],
      {
        encoding: 'utf8',
      },
    );
    expect(piped.stdout).toBe('{');
    expect(piped.stderr).toBe('');
  });
});

/** An atlas with two flags and four balls to a hole: every pair of them is planned. */
function fewerOf(text: string): string {
  const atlas = JSON.parse(text) as { features: { properties: { swale: string; label?: string } }[] };
  const kept = { holeLocation: ['A', 'B'], ballPosition: ['1', '2', '3', '4'] };
  atlas.features = atlas.features.filter(({ properties: { swale: kind, label } }) =>
    kind === 'holeLocation' || kind === 'ballPosition' ? kept[kind].includes(label ?? '') : true,
  );
  return JSON.stringify(atlas);
}

describe('a playbook', () => {
  it('is one page that carries all it needs, and a PDF of the same at true size', async () => {
    const folder = temporaryFolder();
    const out = join(folder, 'new', 'playbook');
    const fewer = join(folder, 'fewer.geojson');
    writeFileSync(fewer, fewerOf(readFileSync(sample, 'utf8')));
    const ended = await swale(built, ['playbook', fewer, '--hole', '2', '--out', out, '--shots', '40']);
    expect(ended.err).toBe('');
    expect(ended.out).toBe(`${join(out, 'playbook.html')}\n${join(out, 'playbook.pdf')}\n`);
    expect(readdirSync(out).sort()).toEqual(['playbook.html', 'playbook.pdf']);
    expect(readdirSync(folder)).toEqual(['fewer.geojson', 'new']);

    const html = readFileSync(join(out, 'playbook.html'), 'utf8');
    expect(html.match(/(?:src|href)=(?!["']?(?:data:|#))[^\s>]*/g) ?? []).toEqual([]);
    expect(html.match(/url\((?!['"]?(?:data:|#))[^)]*\)/g) ?? []).toEqual([]);
    expect(html).not.toMatch(/<script|<link(?![^>]*data:,)|NaN|Infinity|undefined/);
    expect(html).toContain('Sheepwash');
    expect(readFileSync(join(out, 'playbook.pdf'), 'latin1')).toMatch(/^%PDF-/);
  });

  it('has true page sizes and embedded fonts', async (context) => {
    if (spawnSync('pdfinfo', ['-v']).error !== undefined) {
      console.log('SKIP page sizes: no pdfinfo here (Debian: apt-get install poppler-utils)');
      context.skip();
    }
    const out = join(temporaryFolder(), 'cards');
    const made = await swale(built, ['playbook', small, '--out', out, '--shots', '20', '--parts', 'cards']);
    expect(made).toMatchObject({ code: 0, err: '' });
    const pdf = join(out, 'playbook.pdf');
    const info = spawnSync('pdfinfo', ['-f', '1', '-l', '99', pdf], { encoding: 'utf8' }).stdout;
    const sizes = info.split('\n').filter((line) => /^Page +\d+ size/.test(line));
    expect(sizes.length).toBeGreaterThanOrEqual(1);
    // 4.25 x 7 in at 72 points to the inch
    for (const line of sizes) expect(line).toMatch(/306 x 504 pts/);
    const fonts = spawnSync('pdffonts', [pdf], { encoding: 'utf8' }).stdout;
    expect(fonts).toContain('AtkinsonHyperlegibleNext');
    expect(fonts).toContain('SourceSerif4');
    for (const line of fonts.split('\n').filter((one) => one.includes('TrueType')))
      expect(line).toMatch(/Identity-H +yes/);
  });

  it('is written without its PDF, and says so, where there is no Chromium', async () => {
    const out = join(temporaryFolder(), 'playbook');
    const { code, err } = await swale(built, ['playbook', small, '--out', out, '--shots', '1'], {
      CHROME_PATH: join(out, 'no-such-browser'),
    });
    expect(err).toBe(
      'swale playbook: no Chromium for the PDF: install one, or set CHROME_PATH. Only playbook.html was written.\n',
    );
    expect(code).toBe(0);
    expect(readdirSync(out)).toEqual(['playbook.html']);
    expect(statSync(join(out, 'playbook.html')).size).toBeGreaterThan(100_000);
  });
});
