import type { SafeHtml } from './html.ts';
import { html, trusted } from './html.ts';
import type { PlaybookFlag, PlaybookHole, PlaybookModel, PlaybookRow } from './model.ts';
import { cardMap } from './playbookMaps.ts';

const rowsOnCard = 8;
/** Letters of 8 pt in a line of the card, with some to spare, and the height of one, px: the map gives way to them. */
const smallLetters = 76;
const smallHeight = 13.5;
/** What stands on a card besides map, rows and small lines, px: head of two lines under the name, head of the table, gaps. */
const fixedHeight = 102;
const rowHeight = 27.1;
const insideHeight = (7 - 2 * 0.16) * 96;
/** With few rows the map is no taller than this, px. */
const tallestMap = 302;
/** The scale stands in the first line of the key. */
const scaleLetters = 12;

const smallLines = (letters: number): number => Math.ceil(letters / smallLetters);

/** One flag's cards at true size, 4.25 x 7 in: one, or more where the hole has over eight balls. */
export function cardPages(model: PlaybookModel, hole: PlaybookHole, flag: PlaybookFlag): SafeHtml[] {
  if (flag.rows.length === 0) return [];
  // Whose data the map is of stands on every card, which may be all that is printed.
  const credits = model.credits.length === 0 ? '' : `Map data: ${model.credits.join('; ')}`;
  const pages: PlaybookRow[][] = [];
  for (let i = 0; i < flag.rows.length; i += rowsOnCard) pages.push(flag.rows.slice(i, i + rowsOnCard));
  const long = model.units.system === 'yards' ? 'yd' : 'm';
  const short = model.units.system === 'yards' ? 'ft' : 'm';
  const key = (ballBeyond: boolean): string =>
    [
      'Ring: land here. Dashes: flight. Arrows: downhill. Aim: from the flag.',
      ...(ballBeyond ? ['Dashed circle: the ball lies beyond the map.'] : []),
      `${model.dayText.replace(/^[^:]*: /, '').replace(/^green/, 'Green')}.`,
      'Practice: ask the Committee before a round.',
    ].join(' ');
  const mapHeight = (ballBeyond: boolean): number => {
    const rows = Math.min(rowsOnCard, flag.rows.length) * rowHeight;
    const lines = smallLines(key(ballBeyond).length + scaleLetters) + smallLines(credits.length);
    return Math.min(tallestMap, insideHeight - fixedHeight - rows - lines * smallHeight);
  };
  const usual = cardMap(model, hole, flag, mapHeight(false));
  const map =
    usual.ballBeyond && mapHeight(true) < mapHeight(false)
      ? cardMap(model, hole, flag, mapHeight(true))
      : usual;
  return pages.map(
    (rows) =>
      html`<section class="card" ${trusted(`style="--row:20.3pt"`)}>
        <header class="head">
          <span class="num">${hole.label}</span>
          <div class="who">
            <h2>${hole.name}</h2>
            <p>${model.title}${model.playerName === '' ? '' : `, for ${model.playerName}`}</p>
          </div>
          <div class="flag">
            <span class="tag">${flag.mark.label}</span> <b>${flag.placeText}</b>
            <p>${flag.slopeText}</p>
          </div>
        </header>
        ${map.svg}
        <table>
          <colgroup>
            ${trusted('<col style="width:7.5%"><col style="width:25.5%"><col style="width:10%"><col style="width:17%"><col style="width:12.5%"><col style="width:9.5%"><col style="width:9%"><col style="width:9%">')}
          </colgroup>
          <thead>
            <tr>
              <th scope="col"><span hidden>Ball</span></th>
              <th scope="col">Shot, club</th>
              <th scope="col" class="n">Carry<br />${long}</th>
              <th scope="col" class="n">Land<br />paces</th>
              <th scope="col" class="n">Aim<br />${short}</th>
              <th scope="col" class="n">Run<br />${long}</th>
              <th scope="col" class="n">Leave<br />${short}</th>
              <th scope="col" class="n">Up/dn<br />%</th>
            </tr>
          </thead>
          <tbody>
            ${rows.map(
              (row) =>
                html`<tr>
                  <th scope="row"><span class="ball">${row.ballLabel}</span></th>
                  <td class="shot">${row.shotShort}</td>
                  <td class="n">${row.carry}</td>
                  <td class="n">${row.land}</td>
                  <td class="n">${row.aim}</td>
                  <td class="n">${row.run}</td>
                  <td class="n">${row.leave}</td>
                  <td class="n">${row.upAndDown}</td>
                </tr>`,
            )}
          </tbody>
        </table>
        <p class="key"><span class="scale">1 : ${Math.round(map.denominator)}</span>${key(map.ballBeyond)}</p>
        ${credits === '' ? null : html`<p class="key">${credits}</p>`}
      </section>`,
  );
}
