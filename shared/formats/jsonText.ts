import { InputProblem } from '../words/inputProblem.ts';

/** Larger texts are refused before they are parsed: parsing takes several times their size in memory. */
const MOST_CHARACTERS = 64 * 1024 * 1024;

/** Parses JSON; what is wrong is told with the line and column, the same in every engine. */
export function parseJson(text: string, fileName: string): unknown {
  if (text.length > MOST_CHARACTERS)
    throw new InputProblem(
      'file-too-large',
      `The file holds ${String(Math.round(text.length / 1048576))} million characters; the most is 64.`,
      fileName,
      'Keep one course to a file, and simplify traced outlines before importing them.',
    );
  const plain = text.startsWith('\uFEFF') ? text.slice(1) : text;
  if (plain.trim() === '')
    throw new InputProblem(
      'file-empty',
      'The file is empty.',
      fileName,
      'Use the backup beside it, or another copy.',
    );
  try {
    return JSON.parse(plain);
  } catch {
    throw explained(plain, fileName);
  }
}

function explained(text: string, fileName: string): InputProblem {
  const scan = scanJson(text);
  if (scan.notANumber !== null) {
    const { token, at } = scan.notANumber;
    return new InputProblem(
      'not-a-number',
      `${token} stands where a number is needed.`,
      placeInText(fileName, text, at),
      'Give the number, or take the feature out.',
    );
  }
  if (scan.open)
    return new InputProblem(
      'file-truncated',
      'The file breaks off before its end.',
      placeInText(fileName, text, text.trimEnd().length),
      'It was cut short while being copied or saved: use the backup beside it, or another copy.',
    );
  return new InputProblem(
    'not-json',
    'This is no atlas: its text is not JSON.',
    scan.suspect === null ? fileName : placeInText(fileName, text, scan.suspect),
    'Open an atlas saved by Swale (its name ends in .geojson); bring a map, a track or heights in instead.',
  );
}

function placeInText(fileName: string, text: string, at: number): string {
  const before = text.slice(0, at);
  const line = before.split('\n').length;
  const column = at - (before.lastIndexOf('\n') + 1) + 1;
  const features = before.match(/"type"\s*:\s*"Feature"/g)?.length ?? 0;
  const near = features === 0 ? '' : `, near feature ${String(features)}`;
  return `${fileName}, line ${String(line)}, column ${String(column)}${near}`;
}

interface Scan {
  /** A string, list or object is not closed at the end. */
  readonly open: boolean;
  readonly notANumber: { readonly token: string; readonly at: number } | null;
  /** Where the text first cannot be JSON, as far as brackets and words show. */
  readonly suspect: number | null;
}

/** One pass over the text, heeding only strings, brackets and bare words. */
function scanJson(text: string): Scan {
  const brackets: string[] = [];
  let notANumber: Scan['notANumber'] = null;
  let suspect: number | null = null;
  const word = /[A-Za-z_][\w]*/y;
  let i = 0;
  while (i < text.length && suspect === null) {
    const c = text.charAt(i);
    if (c === '"') {
      i += 1;
      while (i < text.length && text.charAt(i) !== '"') i += text.charAt(i) === '\\' ? 2 : 1;
      if (i >= text.length) return { open: true, notANumber, suspect: null };
    } else if (c === '{' || c === '[') brackets.push(c === '{' ? '}' : ']');
    else if (c === '}' || c === ']') {
      if (brackets.pop() !== c) suspect = i;
    } else if (/[A-Za-z_]/.test(c)) {
      word.lastIndex = i;
      const token = word.exec(text)?.[0] ?? c;
      const afterDigit = i > 0 && /[0-9.]/.test(text.charAt(i - 1));
      if (/^(nan|infinity|inf)$/i.test(token)) notANumber ??= { token, at: i };
      else if (!/^(true|false|null)$/.test(token) && !(afterDigit && /^e\d*$/i.test(token))) {
        // A word cut off at the very end is a truncation, not a misspelling.
        const cut =
          i + token.length === text.length && ['true', 'false', 'null'].some((w) => w.startsWith(token));
        if (!cut) suspect = i;
      }
      i += token.length - 1;
    } else if (!/[\s\d.,:+-]/.test(c)) suspect = i;
    i += 1;
  }
  return { open: suspect === null && brackets.length > 0, notANumber, suspect };
}
