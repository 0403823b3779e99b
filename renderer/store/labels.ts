/** The smallest number no ball of the hole has. */
export function nextNumber(labelled: readonly { readonly label: string }[]): string {
  const taken = new Set(labelled.map(({ label }) => label));
  let next = 1;
  while (taken.has(String(next))) next += 1;
  return String(next);
}

/** The first letter no flag of the hole has; after Z come A2, B2 and on. */
export function nextLetter(labelled: readonly { readonly label: string }[]): string {
  const taken = new Set(labelled.map(({ label }) => label));
  for (let round = 1; ; round += 1) {
    for (const letter of 'ABCDEFGHIJKLMNOPQRSTUVWXYZ') {
      const label = round === 1 ? letter : `${letter}${round}`;
      if (!taken.has(label)) return label;
    }
  }
}
