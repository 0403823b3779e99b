import { posix, relative, resolve, sep } from 'node:path';
import { packageOf, roomOf, rooms } from './layers.mjs';

/** @param {string} root @param {string} file */
const fromRoot = (root, file) => relative(root, file).split(sep).join('/');

/**
 * Why an import is refused, or null where it is allowed.
 * @param {string} importer path of the importing file from the root of the repository
 * @param {string} specifier
 * @param {boolean} typeOnly
 */
export function refusal(importer, specifier, typeOnly) {
  const from = roomOf(importer);
  if (from === null) return null; // said once for the file itself
  const room = rooms[from] ?? {};
  const bare = specifier.split('?')[0] ?? specifier;
  if (!bare.startsWith('.')) {
    const name = packageOf(bare);
    const allowed = [...(room.packages ?? []), ...(typeOnly ? (room.typePackages ?? []) : [])];
    return allowed.includes(name) ? null : `${from} may not use the package "${name}".`;
  }
  const target = posix.normalize(posix.join(posix.dirname(importer), bare));
  if (target.startsWith('..')) return `"${specifier}" lies outside the repository.`;
  const to = roomOf(target);
  if (to === null) return `"${specifier}" belongs to no room of tests/lint/layers.mjs.`;
  if (to === from || (room.imports ?? []).includes(to)) return null;
  if ((room.types ?? []).includes(to))
    return typeOnly ? null : `${from} may import only types from ${to}: write "import type".`;
  return `${from} may not import ${to}.`;
}

/** @param {import('estree').Node | null | undefined} node */
const literal = (node) => (node?.type === 'Literal' && typeof node.value === 'string' ? node.value : null);

/**
 * Imports go down the layers and nowhere else; a file or package that the table does not know is refused.
 * @type {import('eslint').Rule.RuleModule}
 */
export default {
  meta: {
    type: 'problem',
    docs: { description: 'Refuse an import that the table of rooms does not allow' },
    schema: [{ type: 'object', properties: { root: { type: 'string' } }, additionalProperties: false }],
    messages: {
      refused: '{{reason}}',
      unclassified: '{{path}} belongs to no room: put it in one, or add its folder to tests/lint/layers.mjs.',
      unreadable: 'An import must be a plain string, so that its layer can be checked.',
    },
  },
  create(context) {
    const root = context.options[0]?.root ?? context.cwd;
    const path = fromRoot(root, resolve(root, context.filename));
    /** @param {any} node @param {any} source @param {boolean} typeOnly */
    const check = (node, source, typeOnly) => {
      const specifier = literal(source);
      if (specifier === null) {
        if (!path.startsWith('tests/')) context.report({ node, messageId: 'unreadable' });
        return;
      }
      const reason = refusal(path, specifier, typeOnly);
      if (reason !== null) context.report({ node: source, messageId: 'refused', data: { reason } });
    };
    /** @param {any} node */
    const isTypeOnly = (node) =>
      node.importKind === 'type' ||
      node.exportKind === 'type' ||
      (node.specifiers?.length > 0 &&
        node.specifiers.every(
          (/** @type {any} */ one) => one.importKind === 'type' || one.exportKind === 'type',
        ));
    return {
      Program(node) {
        if (roomOf(path) === null) context.report({ node, messageId: 'unclassified', data: { path } });
      },
      ImportDeclaration: (node) => check(node, node.source, isTypeOnly(node)),
      ExportAllDeclaration: (node) => check(node, node.source, isTypeOnly(node)),
      ExportNamedDeclaration: (node) => {
        if (node.source) check(node, node.source, isTypeOnly(node));
      },
      ImportExpression: (node) => check(node, node.source, false),
      // import('./x.ts').Name in a type
      TSImportType: (/** @type {any} */ node) =>
        check(node, node.source ?? node.argument?.literal ?? node.argument, true),
      // new Worker(new URL('./worker.ts', import.meta.url))
      "NewExpression[callee.name='URL'][arguments.1.object.type='MetaProperty']": (
        /** @type {any} */ node,
      ) => {
        const specifier = literal(node.arguments[0]);
        if (specifier?.startsWith('.') && /\.(ts|tsx)$/.test(specifier))
          check(node, node.arguments[0], false);
      },
    };
  },
};
