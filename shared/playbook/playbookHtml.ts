import { cardPages } from './cardPages.ts';
import { flagPage, frontPage, holePage } from './guidePages.ts';
import { html, trusted } from './html.ts';
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
  const guide =
    layout.parts === 'cards'
      ? []
      : [
          frontPage(model),
          ...model.holes.flatMap((hole) => [
            holePage(model, hole),
            ...hole.flags.map((flag) => flagPage(model, hole, flag, layout.sheet)),
          ]),
        ];
  const cards =
    layout.parts === 'guide'
      ? []
      : model.holes.flatMap((hole) => hole.flags.flatMap((flag) => cardPages(model, hole, flag)));
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
        <main>${guide} ${cards}</main>
      </body>
    </html> `;
  return page.html;
}
