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
