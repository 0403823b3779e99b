/** What browsers, workers and Node all have, though the language itself does not. */
declare const TextDecoder: new (
  label: string,
  options?: { readonly fatal?: boolean },
) => { decode(content: Uint8Array): string };

const strict = new TextDecoder('utf-8', { fatal: true });
const bytewise = new TextDecoder('latin1');

/** UTF-8 text, without its byte order mark. Throws TypeError for anything else. */
export const utf8Text = (content: Uint8Array): string => strict.decode(content);

/** One character a byte: for headers and numbers, and for looking at what may be no text at all. */
export const latin1Text = (content: Uint8Array): string => bytewise.decode(content);
