/** Broadie (2012, 2014), tour: feet, one-putt percent (found), expected putts (from memory but for 8 ft). */
export const TOUR_PUTTS = [
  [2, 99, 1.01],
  [3, 96, 1.04],
  [4, 88, 1.13],
  [5, 77, 1.23],
  [6, 66, 1.34],
  [8, 50, 1.5],
  [10, 40, 1.61],
  [15, 23, 1.78],
  [20, 15, 1.87],
  [30, 7, 1.98],
  [40, 4, 2.06],
  [50, 3, 2.14],
  [60, 2, 2.21],
] as const;

/** Feet and percent of three putts or more, tour; from memory. */
export const TOUR_THREE_PUTTS = [
  [10, 1],
  [20, 2],
  [30, 5],
  [40, 10],
  [50, 17],
  [60, 23],
] as const;

/** Feet and one-putt percent by level, Broadie (2014); from memory. */
export const LEVEL_PUTTS = {
  scratch: [
    [3, 93],
    [5, 66],
    [8, 41],
    [10, 33],
    [15, 21],
    [20, 14],
    [30, 6],
  ],
  '90s golfer': [
    [3, 84],
    [5, 50],
    [8, 27],
    [10, 20],
    [15, 11],
    [20, 6],
    [30, 2],
  ],
} as const;

/** Feet from which a 90s golfer expects two putts, Broadie (2014); from memory. */
export const NINETIES_TWO_PUTT_FEET = 19;
