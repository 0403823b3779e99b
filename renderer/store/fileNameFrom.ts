/** A plain name for a file of something with this name. */
export const fileNameFrom = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-+|-+$/g, '') || 'atlas';
