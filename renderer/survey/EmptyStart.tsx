import { FileInput, ImagePlus, Map, PencilRuler } from 'lucide-react';

interface EmptyStartProps {
  readonly draw: () => void;
  readonly overPicture: () => void;
  readonly openFile: () => void;
  readonly openSample: () => void;
}

/** Four ways to put ground on an empty sheet. */
export function EmptyStart({ draw, overPicture, openFile, openSample }: EmptyStartProps): React.JSX.Element {
  return (
    <section className="empty-start" aria-label="Ways to start">
      <h2>Put the ground on the sheet</h2>
      <p>Trace one green and its surrounds, add a few heights, and Swale can plan every shot around it.</p>
      <button type="button" className="way filled" onClick={draw}>
        <PencilRuler size={22} strokeWidth={1.9} aria-hidden />
        <span>
          <strong>Draw on this blank canvas</strong>
          Start with the green: press G
        </span>
      </button>
      <button type="button" className="way" onClick={overPicture}>
        <ImagePlus size={22} strokeWidth={1.9} aria-hidden />
        <span>
          <strong>Trace over a map or a picture</strong>A photo, a scan, or a map layer once the atlas is
          placed on the earth
        </span>
      </button>
      <button type="button" className="way" onClick={openFile}>
        <FileInput size={22} strokeWidth={1.9} aria-hidden />
        <span>
          <strong>Bring in a file</strong>
          An atlas, a map, a walked outline, a list of heights
        </span>
      </button>
      <button type="button" className="way" onClick={openSample}>
        <Map size={22} strokeWidth={1.9} aria-hidden />
        <span>
          <strong>Open the sample course</strong>
          Ossel Down: three holes and a practice ground, already planned
        </span>
      </button>
      <p className="empty-foot">Everything stays on this computer. Each stroke is saved as you make it.</p>
    </section>
  );
}

const steps = [
  {
    number: 1,
    title: 'Trace the green',
    hint: 'Press G; click round it or draw it in one stroke',
    left: 6,
    top: 10,
  },
  { number: 2, title: 'Add heights', hint: 'Press 1; a dozen will do', left: 6, top: 48 },
  { number: 3, title: 'Stand a flag', hint: 'Press 3 and click', left: 73, top: 9 },
  { number: 4, title: 'Pin a ball', hint: 'Press 4, then open Plan', left: 73, top: 75 },
] as const;

/** A pencil drawing on the sheet of what is to come, with its steps in order. */
export function EmptySheet(): React.JSX.Element {
  return (
    <div className="empty-sheet">
      <svg viewBox="0 0 1000 700" preserveAspectRatio="none" aria-hidden>
        <g className="pencil">
          <path d="M350 215C300 290 285 390 300 470S370 560 470 562 660 520 685 420 640 280 600 200 520 150 470 155 380 170 350 215Z" />
          <path d="M690 140c40-10 70 40 80 80s10 60-30 58-40-50-60-80-15-52 10-58Z" />
          <path d="M220 540c20-60 70-50 100-25s40 60 10 80-60-10-85-25-28-15-25-30Z" />
          <path className="lead" d="M300 125L352 210" />
          <path className="lead" d="M250 371L392 340" />
          <path className="lead" d="M722 110L545 190" />
          <path className="lead" d="M830 520L752 468" />
          <path
            className="firm"
            d="M441 235h12m-6-6v12M560 255h12m-6-6v12M395 340h12m-6-6v12M520 372h12m-6-6v12M610 400h12m-6-6v12M425 470h12m-6-6v12M545 482h12m-6-6v12"
          />
          <path className="firm" d="M524 208v-32h20v20h-20M524 213m-4 0a4 4 0 1 0 8 0a4 4 0 1 0-8 0" />
          <path className="firm" d="M748 462m-10 0a10 10 0 1 0 20 0a10 10 0 1 0-20 0" />
        </g>
      </svg>
      <ol>
        {steps.map(({ number, title, hint, left, top }) => (
          <li key={number} style={{ left: `${String(left)}%`, top: `${String(top)}%` }}>
            <span className="step-number" aria-hidden>
              {number}
            </span>
            <span>
              <strong>{title}</strong>
              {hint}
            </span>
          </li>
        ))}
      </ol>
    </div>
  );
}
