import type { Bits } from './bits.ts';
import { BrokenBzip2 } from './broken.ts';

const LONGEST_CODE = 20;
const TABLES_MIN = 2;
const TABLES_MAX = 6;

/** A Huffman code in its canonical form: shorter codes first, those of one length in the order of their symbols. */
interface CodeTable {
  shortest: number;
  longest: number;
  /** For each length the last code of it, and what to take off a code for the place of its symbol. */
  lasts: Int32Array;
  offsets: Int32Array;
  symbols: Uint16Array;
}

/** The tables of a block, and which of them each fifty symbols are written by. */
export interface BlockCodes {
  tables: readonly CodeTable[];
  choices: Uint8Array;
}

/** Reads the codes of a block in which so many symbols are used. */
export function readCodes(bits: Bits, symbols: number): BlockCodes {
  const tables = bits.take(3);
  if (tables < TABLES_MIN || tables > TABLES_MAX) throw new BrokenBzip2('a number of tables that cannot be');
  const choices = readChoices(bits, tables);
  return { tables: Array.from({ length: tables }, () => tableOf(readLengths(bits, symbols))), choices };
}

/** The next symbol. */
export function takeSymbol(bits: Bits, { shortest, longest, lasts, offsets, symbols }: CodeTable): number {
  let code = bits.take(shortest);
  for (let length = shortest; length <= longest; length += 1) {
    if (code <= (lasts[length] ?? -1)) {
      const symbol = symbols[code - (offsets[length] ?? 0)];
      if (symbol === undefined) break;
      return symbol;
    }
    code = (code << 1) | bits.take(1);
  }
  throw new BrokenBzip2('a code that stands for nothing');
}

/** Each choice is told by how many tables were chosen later than it. */
function readChoices(bits: Bits, tables: number): Uint8Array {
  const choices = new Uint8Array(bits.take(15));
  const latest = Uint8Array.from({ length: tables }, (_, table) => table);
  for (let at = 0; at < choices.length; at += 1) {
    let place = 0;
    while (bits.take(1) === 1) place += 1;
    const table = latest[place];
    if (table === undefined) throw new BrokenBzip2('a table that is not there');
    latest.copyWithin(1, 0, place);
    latest[0] = table;
    choices[at] = table;
  }
  return choices;
}

/** The length of each symbol's code, told by the difference to the one before. */
function readLengths(bits: Bits, symbols: number): Uint8Array {
  const lengths = new Uint8Array(symbols);
  let length = bits.take(5);
  for (let symbol = 0; symbol < symbols; symbol += 1) {
    while (isLength(length) && bits.take(1) === 1) length += bits.take(1) === 0 ? 1 : -1;
    if (!isLength(length)) throw new BrokenBzip2('a code too long or too short');
    lengths[symbol] = length;
  }
  return lengths;
}

const isLength = (length: number): boolean => length >= 1 && length <= LONGEST_CODE;

function tableOf(lengths: Uint8Array): CodeTable {
  const shortest = Math.min(...lengths);
  const longest = Math.max(...lengths);
  const lasts = new Int32Array(LONGEST_CODE + 1);
  const offsets = new Int32Array(LONGEST_CODE + 1);
  const symbols = new Uint16Array(lengths.length);
  let place = 0;
  let code = 0;
  for (let length = shortest; length <= longest; length += 1) {
    offsets[length] = code - place;
    for (const [symbol, its] of lengths.entries()) {
      if (its !== length) continue;
      symbols[place] = symbol;
      place += 1;
      code += 1;
    }
    lasts[length] = code - 1;
    code <<= 1;
  }
  return { shortest, longest, lasts, offsets, symbols };
}
