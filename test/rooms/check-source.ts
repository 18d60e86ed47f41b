/** Checks one source file against the table of rooms, on its syntax tree: words in comments and strings do not count. */
import { posix } from 'node:path';
import { type ESTree, parseSync } from 'vite';
import { ROOMS, type Room } from './table.ts';

type Node = ESTree.Node;

/** Exact by IEEE 754 and ECMA-262, hence the same in every engine. */
const EXACT_MATH = new Set(
  'sqrt abs min max floor ceil round sign trunc imul clz32 fround E LN10 LN2 LOG10E LOG2E PI SQRT1_2 SQRT2'.split(' '),
);

/** The ECMAScript and host globals by which a run could depend on more than its settings and commands. */
const CLOCKS_AND_BACK_DOORS = new Set(
  'Date performance setTimeout setInterval setImmediate queueMicrotask requestAnimationFrame crypto globalThis eval'.split(
    ' ',
  ),
);

/** What the file does against the rules, one line each. `path` is from the project's folder, with forward slashes. */
export function faultsOf(path: string, code: string): string[] {
  const [, name, ...inside] = path.split('/');
  const room = name === undefined || inside.length === 0 ? undefined : ROOMS[name];
  if (name === undefined || room === undefined) return [`${path}: lies in no declared room`];

  const { program, errors } = parseSync(path, code, { sourceType: 'module' });
  const faults = errors.map((error) => error.message);
  walk(program, undefined, '', (node, parent, key) => {
    for (const specifier of importsOf(node))
      faults.push(...importFaults(path, name, room, inside.join('/'), specifier));
    if (room.headless) faults.push(...headlessFaults(node, parent, key));
  });
  if (name === 'contract')
    faults.push(...program.body.filter(runs).map((node) => `contract holds types only, not a ${node.type}`));
  return faults.map((fault) => `${path}: ${fault}`);
}

type Visit = (node: Node, parent: Node | undefined, key: string) => void;

function walk(node: Node, parent: Node | undefined, key: string, visit: Visit): void {
  visit(node, parent, key);
  for (const [childKey, value] of Object.entries(node)) {
    for (const child of Array.isArray(value) ? value : [value]) {
      if (child !== null && typeof child === 'object' && typeof child.type === 'string')
        walk(child, node, childKey, visit);
    }
  }
}

/** The files and libraries that a node asks for; null for an address that is not written out. */
function importsOf(node: Node): (string | null)[] {
  switch (node.type) {
    case 'ImportDeclaration':
    case 'ExportAllDeclaration':
    case 'ImportExpression':
    case 'TSImportType':
      return [literal(node.source)];
    case 'ExportNamedDeclaration':
      return node.source === null ? [] : [literal(node.source)];
    case 'TSExternalModuleReference':
      return [literal(node.expression)];
    case 'NewExpression': // new URL('./worker.ts', import.meta.url)
      return node.arguments[1] !== undefined && usesImportMeta(node.arguments[1]) ? [literal(node.arguments[0])] : [];
    case 'CallExpression': {
      if (!usesImportMeta(node.callee)) return []; // import.meta.glob(…)
      const first = node.arguments[0];
      return first?.type === 'ArrayExpression' ? first.elements.map(literal) : [literal(first)];
    }
    default:
      return [];
  }
}

function literal(node: Node | null | undefined): string | null {
  return node?.type === 'Literal' && typeof node.value === 'string' ? node.value : null;
}

function usesImportMeta(node: Node): boolean {
  return (
    node.type === 'MemberExpression' && node.object.type === 'MetaProperty' && node.object.property.name === 'meta'
  );
}

function importFaults(path: string, name: string, room: Room, inside: string, specifier: string | null): string[] {
  if (specifier === null) return room.libraries === undefined ? [] : ['imports an address that is not written out'];
  if (!specifier.startsWith('.')) {
    if (room.libraries === undefined) return [];
    const door = room.libraries.find((known) => specifier === known.name || specifier.startsWith(`${known.name}/`));
    if (door === undefined) return [`imports "${specifier}", which ${name} may not`];
    return door.files.test(inside) ? [] : [`imports "${specifier}", which in ${name} only ${door.files.source} may`];
  }
  const [top = '', below = '', ...rest] = posix.join(posix.dirname(path), specifier).split('/');
  const target = top === 'src' && rest.length > 0 ? below : top;
  return target === name || room.doors.includes(target) ? [] : [`imports from ${target}, to which ${name} has no door`];
}

function headlessFaults(node: Node, parent: Node | undefined, key: string): string[] {
  if (node.type === 'BinaryExpression' && node.operator === '**') return ['uses **'];
  if (node.type === 'AssignmentExpression' && node.operator === '**=') return ['uses **='];
  if (node.type !== 'Identifier' || isMerelyAName(parent, key)) return [];
  if (CLOCKS_AND_BACK_DOORS.has(node.name)) return [`uses ${node.name}`];
  if (node.name !== 'Math') return [];
  if (parent?.type !== 'MemberExpression' || parent.computed || parent.property.type !== 'Identifier') {
    return ['uses Math other than as Math.name'];
  }
  return EXACT_MATH.has(parent.property.name) ? [] : [`uses Math.${parent.property.name}`];
}

/** The `b` of `a.b` and of `{ b: 1 }` names no variable. */
function isMerelyAName(parent: Node | undefined, key: string): boolean {
  return (key === 'property' || key === 'key') && parent !== undefined && 'computed' in parent && !parent.computed;
}

/** Whether a statement leaves anything behind once its types are gone. */
function runs(node: Node): boolean {
  switch (node.type) {
    case 'ImportDeclaration':
      return node.importKind !== 'type';
    case 'ExportAllDeclaration':
      return node.exportKind !== 'type';
    case 'ExportNamedDeclaration':
      return node.declaration === null ? node.exportKind !== 'type' : runs(node.declaration);
    default:
      return node.type !== 'TSInterfaceDeclaration' && node.type !== 'TSTypeAliasDeclaration';
  }
}
