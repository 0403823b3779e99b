import type { AreaKind } from '../words/vocabulary.ts';

/** Every ink and fill a drawing uses. On screen they are custom properties, so a theme changes without a redraw. */
export interface Inks {
  readonly sheet: string;
  readonly halo: string;
  readonly ink: string;
  readonly ink2: string;
  readonly ink3: string;
  readonly edge: string;
  readonly propose: string;
  readonly proposeWash: string;
  readonly select: string;
  readonly doubt: string;
  readonly alert: string;
  readonly fills: Readonly<Record<AreaKind, string>>;
  readonly mown: string;
  readonly tall: string;
  readonly water: string;
  readonly sand: string;
  readonly contour: string;
  readonly contourHeavy: string;
  readonly fall: string;
  /** Fill and opacity of the classes 1-2, 2-3, 3-4 and over 4 %; empty where tints are not printed. */
  readonly slopes: readonly { readonly fill: string; readonly opacity: string }[];
}

export interface PlateStyle {
  readonly inks: Inks;
  /** Size of symbols, lines and text: 1 on screen, 0.62 in print, 1.35 with large type. */
  readonly symbolScale: number;
  /** Black only: no tints, so any printer and photocopier keeps it. */
  readonly mono: boolean;
  /** Least size of text, drawing units. */
  readonly leastText: number;
  /** Begins every id in the drawing; different for each drawing on a page. */
  readonly idPrefix: string;
}

export const sansFamily = "'Atkinson Hyperlegible Next', 'DejaVu Sans', Verdana, sans-serif";
export const serifFamily = "'Source Serif 4', Georgia, 'DejaVu Serif', serif";

const screenInks: Inks = {
  sheet: 'var(--sheet)',
  halo: 'var(--halo)',
  ink: 'var(--ink)',
  ink2: 'var(--ink-2)',
  ink3: 'var(--ink-3)',
  edge: 'var(--rule-2)',
  propose: 'var(--propose)',
  proposeWash: 'var(--propose-wash)',
  select: 'var(--select)',
  doubt: 'var(--doubt)',
  alert: 'var(--alert)',
  fills: {
    green: 'var(--t-green)',
    fringe: 'var(--t-fring)',
    approach: 'var(--t-appr)',
    fairway: 'var(--t-fair)',
    lightRough: 'var(--t-light)',
    heavyRough: 'var(--t-heavy)',
    bare: 'var(--t-bare)',
    bunker: 'var(--t-bunk)',
    penaltyArea: 'var(--t-water)',
    outOfBounds: 'var(--t-ob)',
    path: 'var(--t-path)',
    tree: 'var(--t-tree)',
    tee: 'var(--t-tee)',
  },
  mown: 'var(--gp)',
  tall: 'var(--gt)',
  water: 'var(--water)',
  sand: 'var(--stip)',
  contour: 'var(--ctr)',
  contourHeavy: 'var(--idx)',
  fall: 'var(--fall)',
  slopes: [1, 2, 3, 4].map((n) => ({ fill: `var(--slope-${n})`, opacity: `var(--slope-${n}-o)` })),
};

const black = '#000';
const white = '#fff';

const monoInks: Inks = {
  sheet: white,
  halo: white,
  ink: black,
  ink2: black,
  ink3: black,
  edge: black,
  propose: black,
  proposeWash: white,
  select: black,
  doubt: black,
  alert: black,
  fills: {
    green: white,
    fringe: white,
    approach: white,
    fairway: white,
    lightRough: white,
    heavyRough: white,
    bare: white,
    bunker: white,
    penaltyArea: white,
    outOfBounds: white,
    path: white,
    tree: white,
    tee: white,
  },
  mown: black,
  tall: black,
  water: black,
  sand: black,
  contour: black,
  contourHeavy: black,
  fall: black,
  slopes: [],
};

export const screenStyle = (idPrefix: string, symbolScale = 1): PlateStyle => ({
  inks: screenInks,
  symbolScale,
  mono: false,
  leastText: 13,
  idPrefix,
});

/** Print in black only: usually 0.62 of screen size and no text under 8 pt (10.67 units). */
export const paperStyle = (idPrefix: string, symbolScale = 0.62): PlateStyle => ({
  inks: monoInks,
  symbolScale,
  mono: true,
  leastText: 8 / 0.75,
  idPrefix,
});

/** A text size at this style: the screen size times the symbol scale, never under the least. */
export const textSize = (style: PlateStyle, screenSize: number): number =>
  Math.max(screenSize * style.symbolScale, style.leastText);
