/** "2nd": which of several shots drawn in one ink is meant, on the plate, the section and the heads of tables. */
export function besideMark(index: number, count: number): string {
  return count < 3 ? '' : (['', '2nd', '3rd', '4th'][index] ?? '');
}
