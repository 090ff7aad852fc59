import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'vite';
import { ROOT } from '../imports/modules.ts';

/** What a source of the page says: texts that are looked up, by their English, and words that stand bare. */
export interface PageTexts {
  readonly keys: readonly string[];
  readonly bare: readonly string[];
}

/** Attributes that a reader sees or hears. */
const SEEN = ['label', 'title', 'aria-label', 'placeholder', 'alt', 'hint', 'caption', 'empty'];
/** A word, not a letter among signs. */
const WORD = /\p{L}{2,}/u;
/** What only looks like a word: names of programs and formats that are the same in every language. */
const SAME_EVERYWHERE = /^(?:CSV|GPX|GeoJSON|WBGT|WGS 84|NTU|km|kg)$/;

interface SyntaxNode {
  readonly type: string;
  readonly [key: string]: unknown;
}

const isNode = (value: unknown): value is SyntaxNode =>
  typeof value === 'object' && value !== null && 'type' in value;

const isWord = (text: string): boolean => WORD.test(text) && !SAME_EVERYWHERE.test(text.trim());

export function textsIn(path: string, source: string): PageTexts {
  const { program, errors } = parseSync(path, source);
  const [error] = errors;
  if (error !== undefined) throw new Error(`${path}: ${error.message}`);
  const keys: string[] = [];
  const bare: string[] = [];
  collect(program, keys, bare);
  return { keys, bare };
}

export const textsOf = (path: string): PageTexts => textsIn(path, readFileSync(join(ROOT, path), 'utf8'));

function collect(node: unknown, keys: string[], bare: string[]): void {
  if (Array.isArray(node)) {
    for (const member of node) collect(member, keys, bare);
    return;
  }
  if (!isNode(node)) return;
  const key = keyOf(node);
  if (key !== null) keys.push(key);
  for (const text of bareIn(node)) if (isWord(text)) bare.push(text.trim());
  for (const member of Object.values(node)) collect(member, keys, bare);
}

/** The key of t('…'), t`…` or tx`…`, holes by number. */
function keyOf(node: SyntaxNode): string | null {
  if (node.type === 'CallExpression' && nameOf(node.callee) === 't') {
    const [text] = node.arguments as SyntaxNode[];
    return isNode(text) && typeof text.value === 'string' ? text.value : null;
  }
  const tag = node.type === 'TaggedTemplateExpression' ? nameOf(node.tag) : null;
  if (tag !== 't' && tag !== 'tx') return null;
  const { quasis } = node.quasi as { quasis: { value: { cooked: string } }[] };
  return quasis
    .map(({ value }, place) => (place === 0 ? value.cooked : `{${place - 1}}${value.cooked}`))
    .join('');
}

const nameOf = (node: unknown): unknown => (isNode(node) && node.type === 'Identifier' ? node.name : null);

/** Words of a node that are shown as they stand. */
function bareIn(node: SyntaxNode): string[] {
  switch (node.type) {
    case 'JSXText':
      return [String(node.value)];
    case 'JSXAttribute': {
      const { name } = node.name as { name: unknown };
      return SEEN.includes(String(name)) ? literals(node.value) : [];
    }
    case 'JSXElement':
    case 'JSXFragment':
      return (node.children as SyntaxNode[]).flatMap((child) =>
        child.type === 'JSXExpressionContainer' ? literals(child.expression) : [],
      );
    case 'TaggedTemplateExpression': {
      const { expressions } = node.quasi as { expressions: unknown[] };
      return keyOf(node) === null ? [] : expressions.flatMap(literals);
    }
    default:
      return [];
  }
}

/** Strings that an expression comes to: itself, or one of its branches. */
function literals(node: unknown): string[] {
  if (!isNode(node)) return [];
  switch (node.type) {
    case 'Literal':
      return typeof node.value === 'string' ? [node.value] : [];
    case 'TemplateLiteral':
      return (node.quasis as { value: { cooked: string } }[]).map(({ value }) => value.cooked);
    case 'ConditionalExpression':
      return [...literals(node.consequent), ...literals(node.alternate)];
    case 'LogicalExpression':
      return literals(node.right);
    default:
      return [];
  }
}
