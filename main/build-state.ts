import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

const sources = [
  'main',
  'renderer',
  'shared',
  'sample-course',
  'electron.vite.config.ts',
  'package.json',
  'package-lock.json',
];
/** Written last by the build. */
const result = 'out/renderer/index.html';

/** Whether the built program is missing or older than anything it is made from. */
export function isBuildStale(root: string): boolean {
  const built = modified(join(root, result));
  return built === 0 || sources.some((name) => newest(join(root, name)) > built);
}

function modified(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0;
}

/** Latest change of any file at or under a path; a folder's own time tells of files taken away. */
function newest(path: string): number {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (stat === undefined) return 0;
  if (!stat.isDirectory()) return stat.mtimeMs;
  return readdirSync(path).reduce((latest, name) => Math.max(latest, newest(join(path, name))), stat.mtimeMs);
}
