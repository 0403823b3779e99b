import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { RuleTester } from 'eslint';
import tseslint from 'typescript-eslint';
import { describe, expect, it } from 'vitest';
import importRule from './importRule.mjs';
import { packageOf, roomOf, rooms, tools } from './layers.mjs';

const root = resolve(import.meta.dirname, '..', '..');

RuleTester.describe = describe;
RuleTester.it = it;
const tester = new RuleTester({ languageOptions: { parser: tseslint.parser } });
const at = (path: string, code: string): RuleTester.ValidTestCase => ({
  name: `${path}: ${code}`,
  filename: join(root, path),
  options: [{ root }],
  code,
});
const refused = (path: string, code: string, message: RegExp): RuleTester.InvalidTestCase => ({
  ...at(path, code),
  errors: [{ message }],
});

tester.run('imports of a room', importRule, {
  valid: [
    at('shared/planner/rank.ts', "import { roll } from '../ball/roll.ts';"),
    at('shared/planner/rank.ts', "import { cost } from './cost.ts';"),
    at('shared/planner/deep/rank.ts', "export * from '../../words/vocabulary.ts';"),
    at('shared/player/skill.ts', "import type { Club } from '../atlas/records.ts';"),
    at('shared/player/skill.ts', "import { type Club } from '../atlas/records.ts';"),
    at('shared/formats/read.ts', "import type { FeatureCollection } from 'geojson';"),
    at('renderer/library/library.ts', "import Dexie from 'dexie';"),
    at('renderer/map/map.tsx', "import L from 'leaflet';"),
    at('renderer/workers/pool.ts', "new Worker(new URL('./plan.worker.ts', import.meta.url));"),
    at('renderer/bridge/host.ts', "import('../../sample-course/ossel-down.geojson?raw');"),
    at('main/app/boot.ts', "import { app } from 'electron';"),
    at('main/files/read.ts', "import { readFile } from 'node:fs/promises';"),
    at('tests/unit/ball/roll.test.ts', "import { roll } from '../../../shared/ball/roll.ts';"),
    at('tests/published/groups.ts', 'import(`./${name}`);'),
  ],
  invalid: [
    // upward, and sideways
    refused(
      'shared/ball/roll.ts',
      "import { plan } from '../planner/plan.ts';",
      /shared\/ball may not import shared\/planner/,
    ),
    refused(
      'shared/ball/roll.ts',
      "import type { Plan } from '../planner/plan.ts';",
      /may not import shared\/planner/,
    ),
    refused('shared/ball/roll.ts', "export { plan } from '../planner/plan.ts';", /may not import/),
    refused('shared/ball/roll.ts', "type P = import('../planner/plan.ts').Plan;", /may not import/),
    refused('shared/ball/roll.ts', "const p = await import('../planner/plan.ts');", /may not import/),
    refused(
      'shared/planner/rank.ts',
      "import { read } from '../formats/readAtlasFile.ts';",
      /may not import shared\/formats/,
    ),
    refused(
      'renderer/plan/plan.tsx',
      "import { boot } from '../../main/app/boot.ts';",
      /may not import main\/app/,
    ),
    refused(
      'main/app/boot.ts',
      "import { host } from '../../renderer/bridge/host.ts';",
      /may not import renderer\/bridge/,
    ),
    refused(
      'renderer/ui/button.tsx',
      "import { atlas } from '../store/atlas.ts';",
      /may not import renderer\/store/,
    ),
    refused(
      'renderer/plan/plan.tsx',
      "import { Survey } from '../survey/survey.tsx';",
      /may not import renderer\/survey/,
    ),
    refused(
      'renderer/ui/x.ts',
      "new Worker(new URL('../workers/plan.worker.ts', import.meta.url));",
      /may not import renderer\/workers/,
    ),
    // more than types where only types are due
    refused(
      'shared/player/skill.ts',
      "import { atlasDocument } from '../atlas/document.ts';",
      /only types from shared\/atlas/,
    ),
    refused(
      'shared/player/skill.ts',
      "import { atlasDocument, type Club } from '../atlas/document.ts';",
      /only types/,
    ),
    refused(
      'shared/formats/read.ts',
      "import { Feature } from 'geojson';",
      /may not use the package "geojson"/,
    ),
    // packages and builtins out of place
    refused('renderer/store/atlas.ts', "import Dexie from 'dexie';", /may not use the package "dexie"/),
    refused('renderer/plan/plan.tsx', "import L from 'leaflet';", /may not use the package "leaflet"/),
    refused('main/files/write.ts', "import { app } from 'electron';", /may not use the package "electron"/),
    refused('shared/atlas/x.ts', "import { readFile } from 'node:fs';", /may not use the package "node:\*"/),
    refused('main/files/write.ts', "import { readFile } from 'fs';", /may not use the package "fs"/),
    refused('shared/terrain/x.ts', "import thing from 'unheard-of';", /may not use the package "unheard-of"/),
    refused(
      'tests/unit/x.test.ts',
      "import thing from 'unheard-of';",
      /may not use the package "unheard-of"/,
    ),
    refused('shared/terrain/x.ts', "import thing from '@scope/name/part';", /"@scope\/name"/),
    // unclassified
    refused('shared/stray.ts', 'export const x = 1;', /belongs to no room/),
    refused('elsewhere/stray.ts', 'export const x = 1;', /belongs to no room/),
    refused('renderer/unknown/stray.ts', 'export const x = 1;', /belongs to no room/),
    refused('shared/words/x.ts', "import '../stray.ts';", /belongs to no room/),
    refused('shared/words/x.ts', "import '../../../outside.ts';", /outside the repository/),
    // a name made up at run time cannot be checked
    refused('main/app/boot.ts', 'import(name);', /plain string/),
  ],
});

describe('the table of rooms', () => {
  it('finds the nearest room above a file', () => {
    expect(roomOf('shared/ball/roll/skid.ts')).toBe('shared/ball');
    expect(roomOf('renderer/main.tsx')).toBe('renderer');
    expect(roomOf('main/start.ts')).toBe('main');
    expect(roomOf('electron.vite.config.ts')).toBe('.');
    expect(roomOf('main/other/x.ts')).toBeNull();
  });

  it('has no circle between the rooms of shared/', () => {
    const visit = (room: string, above: readonly string[]): void => {
      expect(above, `${above.join(' > ')} > ${room}`).not.toContain(room);
      for (const next of rooms[room]?.imports ?? []) visit(next, [...above, room]);
    };
    for (const room of Object.keys(rooms).filter((name) => name.startsWith('shared/'))) visit(room, []);
  });

  it('keeps the shared rooms away from those of either side', () => {
    for (const [name, room] of Object.entries(rooms)) {
      const reach = [...(room.imports ?? []), ...(room.types ?? [])];
      if (name.startsWith('shared/')) expect(reach.filter((to) => !to.startsWith('shared/'))).toEqual([]);
      if (name.startsWith('main')) expect(reach.filter((to) => to.startsWith('renderer'))).toEqual([]);
      if (name.startsWith('renderer')) expect(reach.filter((to) => to.startsWith('main'))).toEqual([]);
    }
  });

  it('names rooms that it knows', () => {
    for (const room of Object.values(rooms))
      for (const to of [...(room.imports ?? []), ...(room.types ?? [])]) expect(rooms).toHaveProperty([to]);
  });

  it('knows every package of the project, and no other', () => {
    const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
      readonly dependencies?: Readonly<Record<string, string>>;
      readonly devDependencies: Readonly<Record<string, string>>;
    };
    const installed = Object.keys({ ...manifest.dependencies, ...manifest.devDependencies });
    const used = Object.values(rooms).flatMap((room) => [
      ...(room.packages ?? []),
      ...(room.typePackages ?? []),
    ]);
    const known = (name: string): boolean =>
      used.includes(name) ||
      tools.includes(name) ||
      (name.startsWith('@types/') && tools.includes('@types/*'));
    expect(installed.filter((name) => !known(name))).toEqual([]);
    const real = (name: string): boolean =>
      name === 'node:*' || installed.includes(name) || installed.includes(`@types/${name}`);
    expect([...used, ...tools.filter((name) => name !== '@types/*')].filter((name) => !real(name))).toEqual(
      [],
    );
  });

  it('takes the package out of a deeper import', () => {
    expect(packageOf('@scope/name/part')).toBe('@scope/name');
    expect(packageOf('react-dom/client')).toBe('react-dom');
    expect(packageOf('node:fs/promises')).toBe('node:*');
  });
});
