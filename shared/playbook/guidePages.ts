import { contourStepWords, usualContourM } from '../plate/contourSteps.ts';
import type { SafeHtml } from './html.ts';
import { html } from './html.ts';
import type { PlaybookFlag, PlaybookHole, PlaybookModel, PlaybookRow } from './model.ts';
import type { SheetSize } from './playbookCss.ts';
import { flagMap, overviewMap } from './playbookMaps.ts';
import { exceededSizeRules, sizeRules } from './sizeRules.ts';

/** Cover page: whose it is, the day it was worked out for, how to read it, and the cautions. */
export function frontPage(model: PlaybookModel): SafeHtml {
  return html`<section class="guide front">
    <h1>${model.title}</h1>
    <p class="for">Playbook${model.playerName === '' ? '' : ` for ${model.playerName}`}. ${model.dayText}.</p>
    <h2>Before you use it</h2>
    <dl>
      ${model.cautions.map(
        (caution) =>
          html`<dt>${caution.heading}</dt>
            <dd>${caution.text} <span class="src">${caution.source}</span></dd>`,
      )}
    </dl>
    <h2>Sizes the published Rules name</h2>
    <table>
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col">Limit</th>
          <th scope="col">Source</th>
        </tr>
      </thead>
      <tbody>
        ${sizeRules.map(
          (rule) =>
            html`<tr>
              <td>${rule.quantity}</td>
              <td>${rule.limit}</td>
              <td class="small">${rule.source}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    <h2>How to read the pages</h2>
    <ul>
      <li>
        Circles with numbers are balls, squares with letters are flags. Up the sheet is the way the hole is
        played.
      </li>
      <li>
        A dashed line is the flight and its ring the spot to land on; a plain line is a putt’s start line.
      </li>
      <li>
        Land: paces onto the green from its near edge along the line. Aim: how far right (R) or left (L) of
        the flag the ball starts.
      </li>
      <li>
        Swing: small, medium or long for this player, by the carries measured of the club, else by clubhead
        speed.
      </li>
      <li>
        Leave: what is left to the hole in the middle of a hundred such shots. Up and down: holed in two from
        here.
      </li>
      <li>Trouble: sand, penalty, out of bounds, heavy rough, or striking a lip, bank or branch.</li>
      <li>
        Contours lie ${contourStepWords(usualContourM(model.units), model.units)} apart; every second is heavy
        and carries its height in ${model.units.system === 'yards' ? 'feet' : 'metres'}. Arrows run downhill,
        longer where steeper.
      </li>
    </ul>
    ${
      model.credits.length === 0
        ? ''
        : html`<h2>Map data</h2>
            <ul>
              ${model.credits.map((line) => html`<li>${line}</li>`)}
            </ul>`
    }
  </section>`;
}

/** A hole's own page: the large map, its flags and its balls. */
export function holePage(model: PlaybookModel, hole: PlaybookHole): SafeHtml {
  const map = overviewMap(model, hole);
  return html`<section class="guide">
    <header class="head">
      <span class="num">${hole.label}</span>
      <div class="who">
        <h1>${hole.name}</h1>
        <p>${hole.subtitle}</p>
      </div>
      <p class="small">map 1 : ${Math.round(map.denominator)}</p>
    </header>
    ${map.svg}
    <div class="cols">
      <div>
        <h3>Hole locations</h3>
        <table>
          <thead>
            <tr>
              <th scope="col">Flag</th>
              <th scope="col">Paces</th>
              <th scope="col" class="n">Slope</th>
            </tr>
          </thead>
          <tbody>
            ${hole.flags.map(
              (flag) =>
                html`<tr>
                  <td><span class="tag">${flag.mark.label}</span></td>
                  <td>
                    ${flag.placeText}${flag.name === '' ? '' : html`<div class="sub">${flag.name}</div>`}
                  </td>
                  <td class="n">${flag.slopeText}</td>
                </tr>`,
            )}
          </tbody>
        </table>
      </div>
      <div>
        <h3>Ball positions</h3>
        <table>
          <thead>
            <tr>
              <th scope="col">Ball</th>
              <th scope="col">Where, and how it lies</th>
            </tr>
          </thead>
          <tbody>
            ${hole.balls.map((ball) => ballLine(ball.mark.label, ball.name, ball.lieText))}
          </tbody>
        </table>
      </div>
    </div>
  </section>`;
}

const sheetIn: Readonly<Record<SheetSize, { widthIn: number; heightIn: number }>> = {
  a4: { widthIn: 210 / 25.4, heightIn: 297 / 25.4 },
  letter: { widthIn: 8.5, heightIn: 11 },
};

/** A flag's page: the map with every landing spot, and a table of every ball with its reasons. */
export function flagPage(
  model: PlaybookModel,
  hole: PlaybookHole,
  flag: PlaybookFlag,
  sheet: SheetSize,
): SafeHtml {
  const paperIn = sheetIn[sheet];
  const map = flagMap(model, hole, flag, sheet === 'a4' ? 310 : 270);
  const exceeded = exceededSizeRules({ scaleDenominator: map.denominator, ...paperIn });
  const long = model.units.system === 'yards' ? 'yd' : 'm';
  const short = model.units.system === 'yards' ? 'ft' : 'm';
  return html`<section class="guide">
    <header class="head">
      <span class="num">${hole.label}</span>
      <div class="who">
        <h2>${hole.name}</h2>
        <p>${model.dayText}</p>
      </div>
      <div class="flag">
        <span class="tag">${flag.mark.label}</span> <b>${flag.placeText}</b>
        <p>${flag.slopeText}; map 1 : ${Math.round(map.denominator)}</p>
      </div>
    </header>
    <div class="beside">
      ${map.svg}
      <table class="balls">
        <tbody>
          ${flag.rows.map((row) => ballLine(row.ballLabel, row.ballName, row.lieText))}
        </tbody>
      </table>
    </div>
    <table class="shots">
      <caption hidden>
        Shots to flag ${flag.mark.label} of hole ${hole.label}
      </caption>
      <thead>
        <tr>
          <th scope="col">Ball</th>
          <th scope="col">Shot and club</th>
          <th scope="col">Swing</th>
          <th scope="col" class="n">Carry<br />${long}</th>
          <th scope="col" class="n">Land<br />paces</th>
          <th scope="col" class="n">Aim<br />${short}</th>
          <th scope="col" class="n">Run<br />${long}</th>
          <th scope="col" class="n">Leave<br />${short}</th>
          <th scope="col" class="n">Up and<br />down %</th>
          <th scope="col" class="n">Trouble<br />%</th>
        </tr>
      </thead>
      ${flag.rows.map(rowHtml)}
    </table>
    ${flag.missing.length === 0 ? null : html`<p class="small">No plan here for ball ${flag.missing.join(', ')}.</p>`}
    ${flag.measure === null ? null : html`<p class="small">${flag.measure}</p>`}
    <p class="small">
      For preparation and practice. This map is ${exceeded.includes('scale') ? 'larger' : 'no larger'} than 1
      : 480 but the sheet is larger than a card; see “Before you use it”.
    </p>
  </section>`;
}

function rowHtml(row: PlaybookRow): SafeHtml {
  const cells = [row.carry, row.land, row.aim, row.run, row.leave, row.upAndDown, row.trouble];
  return html`<tbody>
    <tr>
      <th scope="row"><span class="ball">${row.ballLabel}</span></th>
      <td class="shot">${row.shot}</td>
      <td>${row.swing}</td>
      ${cells.map((cell) => html`<td class="n">${cell}</td>`)}
    </tr>
    <tr class="more">
      <td></td>
      <td colspan="9">
        ${row.choiceDiffers === null ? null : html`<span class="yours">${row.choiceDiffers}</span> `}
        ${row.why.join(' ')} ${row.amongCarries === null ? null : html`<b>Swing:</b> ${row.amongCarries}.`}
        <b>Risk:</b> ${row.risk}. ${row.holds === null ? null : html`<b>Holds for</b> ${row.holds}.`}
        ${row.safe === null ? null : html`<b>Safe:</b> ${row.safe}.`}
        ${row.open === null ? null : html`<b>Survey:</b> ${row.open}`}
        ${row.note === '' ? null : html`<b>Note:</b> ${row.note}`}
      </td>
    </tr>
  </tbody>`;
}

function ballLine(label: string, name: string, lie: string): SafeHtml {
  return html`<tr>
    <td><span class="ball">${label}</span></td>
    <td>
      ${name}
      <div class="sub">${lie}</div>
    </td>
  </tr>`;
}
