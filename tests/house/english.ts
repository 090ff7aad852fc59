import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'vite';
import { ROOT } from './imports/modules.ts';

/** Three words and more with blanks between them, figures and holes among them or not. */
const SENTENCE = /\p{L}{2,}\S*\s+(?:\S+\s+)*?\p{L}{2,}\S*\s+(?:\S+\s+)*?\p{L}{2,}/u;

/** A word, not a letter among signs. */
const WORD = /\p{L}{2,}/u;

/** The texts of a source that read as English: strings and templates of three words and more, faults of the code aside. */
export function sentencesIn(path: string, source: string): string[] {
  const { program, errors } = parseSync(path, source);
  const [error] = errors;
  if (error !== undefined) throw new Error(`${path}: ${error.message}`);
  const found: string[] = [];
  collect(program, found);
  return found;
}

/**
 * The texts of a source that may be printed as they stand: strings and templates with a word in them, but for those that
 * are only compared with, lists of codes (`as const`), and types.
 */
export function printedIn(path: string, source: string): string[] {
  const { program, errors } = parseSync(path, source);
  const [error] = errors;
  if (error !== undefined) throw new Error(`${path}: ${error.message}`);
  const found: string[] = [];
  collectPrinted(program, found);
  return found;
}

export const printedOf = (path: string): string[] => printedIn(path, readFileSync(join(ROOT, path), 'utf8'));

const COMPARISONS: readonly unknown[] = ['===', '!==', 'in'];

/** What of a node can come to be printed; nothing of an import or a type. */
function printable(node: SyntaxNode): unknown[] {
  const isText = (one: unknown) => isNode(one) && textOf(one) !== null;
  switch (node.type) {
    case 'ImportDeclaration':
    case 'ExportAllDeclaration':
    case 'TSTypeAliasDeclaration':
    case 'TSInterfaceDeclaration':
    case 'TSTypeAnnotation':
    case 'TSTypeParameterInstantiation':
      return [];
    case 'ExportNamedDeclaration':
      return [node.declaration];
    case 'TSAsExpression':
      return (node.typeAnnotation as SyntaxNode).type === 'TSTypeReference' ? [] : [node.expression];
    case 'BinaryExpression':
      return [node.left, node.right].filter((side) => !(COMPARISONS.includes(node.operator) && isText(side)));
    case 'SwitchCase':
      return [node.consequent];
    case 'Property':
      return node.computed === true ? [node.key, node.value] : [node.value];
    case 'MemberExpression':
      return isText(node.property) ? [node.object] : [node.object, node.property];
    default:
      return Object.values(node);
  }
}

function collectPrinted(node: unknown, found: string[]): void {
  if (Array.isArray(node)) {
    for (const member of node) collectPrinted(member, found);
    return;
  }
  if (!isNode(node)) return;
  const text = textOf(node);
  if (text !== null && WORD.test(text)) found.push(text);
  for (const member of printable(node)) collectPrinted(member, found);
}

export const sentencesOf = (path: string): string[] =>
  sentencesIn(path, readFileSync(join(ROOT, path), 'utf8'));

interface SyntaxNode {
  readonly type: string;
  readonly [key: string]: unknown;
}

function collect(node: unknown, found: string[]): void {
  if (Array.isArray(node)) {
    for (const member of node) collect(member, found);
    return;
  }
  if (!isNode(node)) {
    return;
  }
  // What is thrown is for who mends the code, not for who plans a trip.
  if (node.type === 'ThrowStatement') return;
  const text = textOf(node);
  if (text !== null && SENTENCE.test(text)) found.push(text);
  for (const member of Object.values(node)) collect(member, found);
}

const isNode = (value: unknown): value is SyntaxNode =>
  typeof value === 'object' && value !== null && 'type' in value;

/** What a literal says, a hole of a template as a mark; null for what is none. */
function textOf(node: SyntaxNode): string | null {
  if (node.type === 'Literal') return typeof node.value === 'string' ? node.value : null;
  if (node.type !== 'TemplateLiteral') return null;
  const pieces = node.quasis as { value: { cooked: string } }[];
  return pieces.map(({ value }) => value.cooked).join('…');
}
