/** Steps of firmness that can be told apart under foot, softest first, each with the middle of its fifth. */
export const firmnessSteps = [
  { value: 0.1, words: 'soft' },
  { value: 0.3, words: 'rather soft' },
  { value: 0.5, words: 'medium' },
  { value: 0.7, words: 'rather firm' },
  { value: 0.9, words: 'firm' },
] as const;

/** A firmness of 0 to 1 as the nearest of its steps. */
export const firmnessWord = (firmness: number): string =>
  firmnessSteps[Math.min(4, Math.max(0, Math.floor(firmness * 5 + 1e-9)))]?.words ?? '';
