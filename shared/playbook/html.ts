import { escapeMarkup } from '../plate/markup.ts';

/** Markup that is already safe to place in a page. */
export interface SafeHtml {
  readonly html: string;
}

type Part = SafeHtml | string | number | null | readonly SafeHtml[];

/** A template whose strings are trusted and whose values are escaped, unless they are safe markup already. */
export function html(strings: TemplateStringsArray, ...values: readonly Part[]): SafeHtml {
  return {
    html: strings.map((text, i) => text + (i < values.length ? partHtml(values[i] ?? null) : '')).join(''),
  };
}

const isMany = (part: Part): part is readonly SafeHtml[] => Array.isArray(part);

function partHtml(part: Part): string {
  if (part === null) return '';
  if (typeof part === 'string') return escapeMarkup(part);
  if (typeof part === 'number') return String(part);
  if (isMany(part)) return part.map((piece) => piece.html).join('');
  return part.html;
}

/** Markup made by our own serialisers, taken as it is. */
export const trusted = (markup: string): SafeHtml => ({ html: markup });
