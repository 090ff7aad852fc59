import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'vite';
import { ROOT } from './imports/modules.ts';

/** Three words and more with blanks between them, figures and holes among them or not. */
const SENTENCE = /\p{L}{2,}\S*\s+(?:\S+\s+)*?\p{L}{2,}\S*\s+(?:\S+\s+)*?\p{L}{2,}/u;

/** The texts of a source that read as English: strings and templates of three words and more, faults of the code aside. */
export function sentencesIn(path: string, source: string): string[] {
  const { program, errors } = parseSync(path, source);
  const [error] = errors;
  if (error !== undefined) throw new Error(`${path}: ${error.message}`);
  const found: string[] = [];
  collect(program, found);
  return found;
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
