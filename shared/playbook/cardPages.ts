import type { SafeHtml } from './html.ts';
import { html, trusted } from './html.ts';
import type { PlaybookFlag, PlaybookHole, PlaybookModel, PlaybookRow } from './model.ts';
import { cardMap } from './playbookMaps.ts';

const rowsOnCard = 8;
const mapHeight = 302;
/** Letters of 8 pt in a line of the card, with some to spare, and the height of one, px: the map gives way to them. */
const creditLetters = 62;
const creditHeight = 14;

/** One flag's cards at true size, 4.25 x 7 in: one, or more where the hole has over eight balls. */
export function cardPages(model: PlaybookModel, hole: PlaybookHole, flag: PlaybookFlag): SafeHtml[] {
  if (flag.rows.length === 0) return [];
  // Whose data the map is of stands on every card, which may be all that is printed.
  const credits = model.credits.length === 0 ? '' : `Map data: ${model.credits.join('; ')}`;
  const creditLines = Math.ceil(credits.length / creditLetters);
  const map = cardMap(model, hole, flag, mapHeight - creditLines * creditHeight);
  const pages: PlaybookRow[][] = [];
  for (let i = 0; i < flag.rows.length; i += rowsOnCard) pages.push(flag.rows.slice(i, i + rowsOnCard));
  const long = model.units.system === 'yards' ? 'yd' : 'm';
  const short = model.units.system === 'yards' ? 'ft' : 'm';
  const key = [
    'Ring: land here. Dashes: flight. Arrows: downhill. Aim: from the flag.',
    map.ballBeyond ? 'Dashed circle: the ball lies beyond the map.' : '',
    `${model.dayText.replace(/^[^:]*: /, '').replace(/^green/, 'Green')}.`,
  ];
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
        <p class="key">
          <span class="scale">1 : ${Math.round(map.denominator)}</span
          >${key.filter((line) => line !== '').join(' ')} Practice: ask the Committee before a round.
        </p>
        ${credits === '' ? null : html`<p class="key">${credits}</p>`}
      </section>`,
  );
}
