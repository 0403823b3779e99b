import { SaxesParser } from 'saxes';
import { InputProblem } from '../../words/inputProblem.ts';

/** An element with its attributes, child elements and own text. Names are without a namespace prefix. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly XmlElement[];
  readonly text: string;
  readonly line: number;
}

const DEEPEST = 64;
const MOST_ELEMENTS = 1_500_000;

interface OpenElement {
  name: string;
  attributes: Record<string, string>;
  children: OpenElement[];
  text: string;
  line: number;
}

/**
 * The root element of an XML text. A document type declaration is refused outright, and so are all entities but the five of
 * XML itself: nothing is ever expanded or fetched.
 *
 * @throws InputProblem with the line, for anything that is not well-formed, too deep or too large
 */
export function readXml(text: string, fileName: string): XmlElement {
  const parser = new SaxesParser();
  const stack: OpenElement[] = [];
  const roots: OpenElement[] = [];
  let elements = 0;
  const refuse = (code: string, what: string, remedy: string): never => {
    throw new InputProblem(
      code,
      what,
      `${fileName}, line ${String(parser.line)}, column ${String(parser.column + 1)}`,
      remedy,
    );
  };
  parser.on('doctype', () =>
    refuse(
      'xml-doctype',
      'the file declares a document type, which can hide unbounded or outside content.',
      'Take the <!DOCTYPE …> out; no map format needs it.',
    ),
  );
  parser.on('error', (error) => {
    // The parser also says where; it is said here in the project's own words.
    const why = error.message.replace(/^\d+:\d+: /, '').replace(/\.$/, '');
    const cut = /unclosed tag|unexpected end/.test(why);
    refuse(
      cut ? 'file-truncated' : 'xml-broken',
      cut ? 'the file breaks off before its end.' : `this is not well-formed XML (${why}).`,
      cut ? 'It was cut short while being copied or saved: use another copy.' : 'Export the file again.',
    );
  });
  parser.on('opentag', ({ name, attributes }) => {
    elements += 1;
    if (elements > MOST_ELEMENTS)
      refuse(
        'too-many',
        `the file holds more than ${String(MOST_ELEMENTS)} elements.`,
        'Cut out the course.',
      );
    if (stack.length >= DEEPEST)
      refuse(
        'xml-too-deep',
        `elements are nested more than ${String(DEEPEST)} deep.`,
        'Export the file again.',
      );
    const element: OpenElement = {
      name: localName(name),
      attributes: Object.fromEntries(
        Object.entries(attributes).map(([key, value]) => [localName(key), value]),
      ),
      children: [],
      text: '',
      line: parser.line,
    };
    const parent = stack.at(-1);
    if (parent === undefined) roots.push(element);
    else parent.children.push(element);
    stack.push(element);
  });
  const addText = (part: string): void => {
    const open = stack.at(-1);
    if (open !== undefined) open.text += part;
  };
  parser.on('text', addText);
  parser.on('cdata', addText);
  parser.on('closetag', () => stack.pop());
  parser.write(text.startsWith('\uFEFF') ? text.slice(1) : text).close();
  const [root] = roots;
  if (root === undefined) return refuse('xml-broken', 'there is no element in it.', 'Choose another file.');
  return root;
}

export const childrenNamed = (element: XmlElement, name: string): readonly XmlElement[] =>
  element.children.filter((child) => child.name === name);

/** Trimmed text of the first child of this name; empty where there is none. */
export const textOfChild = (element: XmlElement, name: string): string =>
  element.children.find((child) => child.name === name)?.text.trim() ?? '';

const localName = (name: string): string => name.slice(name.indexOf(':') + 1);
