import { readdirSync } from 'node:fs';
import type { CheckGroup } from './row.ts';

/** Every group beside this file, in order of file name. */
export async function checkGroups(): Promise<readonly CheckGroup[]> {
  const files = readdirSync(import.meta.dirname)
    .filter((name) => name.endsWith('.checks.ts'))
    .sort();
  const modules = await Promise.all(
    files.map((name) => import(/* @vite-ignore */ `./${name}`) as Promise<{ readonly default: CheckGroup }>),
  );
  return modules.map((module) => module.default);
}
