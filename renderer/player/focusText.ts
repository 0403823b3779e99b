/** Takes the first field of what was just added in hand, so that what is typed replaces what stands there. */
export function focusText(added: Element | null | undefined): void {
  const field = added?.querySelector('input');
  field?.focus();
  field?.select();
}
