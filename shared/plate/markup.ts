import type { SvgNode } from './svgNode.ts';

const escapes: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text made harmless in element content and in quoted attribute values; control characters XML forbids are dropped. */
export function escapeMarkup(text: string): string {
  // eslint-disable-next-line no-control-regex -- these are the characters XML 1.0 does not allow at all
  const allowed = text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '');
  return allowed.replace(/[&<>"']/g, (character) => escapes[character] ?? character);
}

/**
 * A drawing as SVG markup. Element and attribute names come from code, never from a document; they are checked all the
 * same, so that a mistake cannot become a hole.
 */
export function markup(node: SvgNode): string {
  const parts: string[] = [];
  write(node, parts);
  return parts.join('');
}

const safeName = /^[a-zA-Z][a-zA-Z0-9-]*$/;

function write(node: SvgNode, parts: string[]): void {
  checkName(node.tag);
  parts.push('<', node.tag);
  if (node.tag === 'svg') parts.push(' xmlns="http://www.w3.org/2000/svg"');
  for (const [name, value] of Object.entries(node.attributes)) {
    checkName(name);
    parts.push(' ', name, '="', escapeMarkup(String(value)), '"');
  }
  if (node.children.length === 0) {
    parts.push('/>');
    return;
  }
  parts.push('>');
  for (const child of node.children) {
    if (typeof child === 'string') parts.push(escapeMarkup(child));
    else write(child, parts);
  }
  parts.push('</', node.tag, '>');
}

function checkName(name: string): void {
  if (!safeName.test(name)) throw new Error(`"${name}" cannot name an element or attribute of a drawing`);
}
