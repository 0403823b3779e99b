/** Numbers by size and letters by the alphabet, the same in every language: 2 before 10, A before B. */
export function byLabel(a: { readonly label: string }, b: { readonly label: string }): number {
  const numbers = Number(a.label) - Number(b.label);
  if (numbers === numbers) return numbers;
  return a.label < b.label ? -1 : a.label > b.label ? 1 : 0;
}
