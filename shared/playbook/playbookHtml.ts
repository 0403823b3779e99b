import { cardPages } from './cardPages.ts';
import { flagPage, frontPage, holePage } from './guidePages.ts';
import { html, type SafeHtml, trusted } from './html.ts';
import type { PlaybookModel } from './model.ts';
import type { PlaybookFont, SheetSize } from './playbookCss.ts';
import { fontFaces, playbookCss } from './playbookCss.ts';

export interface PlaybookLayout {
  readonly fonts: readonly PlaybookFont[];
  readonly sheet: SheetSize;
  /** The guide on full sheets, the true-size cards, or the guide with the cards after it. */
  readonly parts: 'guide' | 'cards' | 'both';
}

/**
 * The playbook as one self-contained page: drawings, letters and styles inside, nothing fetched, nothing run. Page sizes
 * are set in CSS, so printing "as the page says" keeps the true scale.
 */
export function playbookHtml(model: PlaybookModel, layout: PlaybookLayout): string {
  const steps = playbookHtmlSteps(model, layout);
  let step = steps.next();
  while (step.done !== true) step = steps.next();
  return step.value;
}

/** `playbookHtml` a page at a time: yields the share of the pages that is laid out. */
export function* playbookHtmlSteps(model: PlaybookModel, layout: PlaybookLayout): Generator<number, string> {
  const guide = [
    () => [frontPage(model)],
    ...model.holes.flatMap((hole) => [
      () => [holePage(model, hole)],
      ...hole.flags.map((flag) => () => [flagPage(model, hole, flag, layout.sheet)]),
    ]),
  ];
  const cards = model.holes.flatMap((hole) => hole.flags.map((flag) => () => cardPages(model, hole, flag)));
  const parts = [...(layout.parts === 'cards' ? [] : guide), ...(layout.parts === 'guide' ? [] : cards)];
  const pages: SafeHtml[] = [];
  for (const [i, part] of parts.entries()) {
    pages.push(...part());
    yield (i + 1) / parts.length;
  }
  const page = html`<!doctype html>
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width" />
        <meta
          http-equiv="Content-Security-Policy"
          content="default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:"
        />
        <link rel="icon" href="data:," />
        <title>${model.title}: playbook${model.playerName === '' ? '' : ` for ${model.playerName}`}</title>
        <style>
          ${trusted(fontFaces(layout.fonts) + playbookCss(layout.sheet))}
        </style>
      </head>
      <body>
        <main>${pages}</main>
      </body>
    </html> `;
  return page.html;
}
