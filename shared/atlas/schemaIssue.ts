import type * as z from 'zod';

/** One sentence and a remedy for what a schema found wrong, in plain words. */
export function schemaIssueText(issue: z.core.$ZodIssue, found: unknown): { what: string; remedy: string } {
  const value = shown(found);
  switch (issue.code) {
    case 'invalid_type':
      return found === undefined
        ? { what: 'is missing.', remedy: `Give ${typeWords(issue.expected)}.` }
        : {
            what: `is ${value}, which is not ${typeWords(issue.expected)}.`,
            remedy: `Give ${typeWords(issue.expected)}.`,
          };
    case 'invalid_value':
      return {
        what: found === undefined ? 'is missing.' : `is ${value}, which is not known.`,
        remedy: `Use one of: ${issue.values.map(String).join(', ')}.`,
      };
    case 'too_small':
    case 'too_big': {
      const limit = String(issue.code === 'too_small' ? issue.minimum : issue.maximum);
      const least = issue.code === 'too_small';
      if (issue.origin === 'number' || issue.origin === 'int')
        return {
          what: `is ${value}, which is too ${least ? 'small' : 'large'}.`,
          remedy: `Give ${least ? (issue.inclusive === false ? 'more than' : 'at least') : 'at most'} ${limit}.`,
        };
      const unit = issue.origin === 'string' ? 'characters' : 'entries';
      return {
        what: `has too ${least ? 'few' : 'many'} ${unit}.`,
        remedy: `Give ${least ? 'at least' : 'at most'} ${limit}.`,
      };
    }
    case 'unrecognized_keys':
      return {
        what: `holds ${issue.keys.slice(0, 3).map(shown).join(', ')}, which an atlas has no place for.`,
        remedy: 'Take it out; import the file instead if it comes from another program.',
      };
    case 'invalid_format':
      return { what: `is ${value}, which is not a usable id.`, remedy: `It ${issue.message}.` };
    case 'custom':
      return { what: issue.message, remedy: 'Correct it or take it out.' };
    default:
      return { what: `is ${value}, which does not fit.`, remedy: 'Correct it or take it out.' };
  }
}

/** What stands at a path in plain data; undefined where the path leads nowhere. */
export function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[key] : undefined,
    root,
  );
}

/** A value cut short for a message. */
export function shown(value: unknown): string {
  if (typeof value === 'number') return String(value);
  if (typeof value === 'string') return `"${value.length > 40 ? `${value.slice(0, 40)}...` : value}"`;
  if (Array.isArray(value)) return 'a list';
  if (value === null || typeof value === 'boolean') return String(value);
  return value === undefined ? 'nothing' : 'an object';
}

function typeWords(expected: string): string {
  switch (expected) {
    case 'number':
      return 'a finite number';
    case 'int':
      return 'a whole number';
    case 'string':
      return 'text';
    case 'boolean':
      return 'true or false';
    case 'array':
    case 'tuple':
      return 'a list';
    default:
      return 'an object';
  }
}
