import { parseArgs } from 'node:util';
import { UsageProblem } from './usageProblem.ts';

export interface ArgumentShape {
  /** Names of the arguments without a dash, all needed. */
  readonly positionals: readonly string[];
  /** Whether the last of them may be given many times. */
  readonly manyLast?: boolean;
  readonly values?: readonly string[];
  readonly flags?: readonly string[];
  /** Those of `values` that must be given. */
  readonly needed?: readonly string[];
}

export interface Arguments {
  /** In the order of the shape's positionals; always all of them, and more only where the last may repeat. */
  readonly positionals: readonly string[];
  readonly values: ReadonlyMap<string, string>;
  readonly flags: ReadonlySet<string>;
}

/** Sorts out a command's arguments, or throws UsageProblem saying what is wrong with them. */
export function readArguments(args: readonly string[], shape: ArgumentShape): Arguments {
  const { values, positionals } = parsed(args, shape);
  const missing = shape.positionals[positionals.length];
  if (missing !== undefined) throw new UsageProblem(`${missing} is missing.`);
  const extra = positionals[shape.positionals.length];
  if (extra !== undefined && shape.manyLast !== true)
    throw new UsageProblem(`"${extra}" is one argument too many.`);
  const texts = new Map<string, string>();
  const flags = new Set<string>();
  for (const [name, value] of Object.entries(values)) {
    if (typeof value === 'string') texts.set(name, value);
    if (value === true) flags.add(name);
  }
  const absent = (shape.needed ?? []).find((name) => !texts.has(name));
  if (absent !== undefined) throw new UsageProblem(`--${absent} is missing.`);
  return { positionals, values: texts, flags };
}

function parsed(args: readonly string[], shape: ArgumentShape): ReturnType<typeof parseArgs> {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        ...Object.fromEntries((shape.values ?? []).map((name) => [name, { type: 'string' as const }])),
        ...Object.fromEntries((shape.flags ?? []).map((name) => [name, { type: 'boolean' as const }])),
      },
    });
  } catch (error) {
    if (error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS'))
      throw new UsageProblem(`${error.message.split(/\. |\n/)[0] ?? 'The arguments are wrong'}.`);
    throw error;
  }
}
