/** "wind", "wind and moisture", "the flag, wind and moisture". */
export function listed(words: readonly string[]): string {
  const last = words[words.length - 1] ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}
