import type { Tags, Waypoint } from '../../../core/input/sources.ts';
import { deniesInNote } from '../../../core/supply/tags/denying/denials.ts';
import { holdsAny, wholeWords } from '../../../core/supply/tags/denying/whole-words.ts';
import { parseKey } from '../extract/element-key.ts';
import { setTag } from '../extract/set-tag.ts';
import { SUPPLY_WORDS, type WaypointWord } from './waypoint-words.ts';

/** A key of OSM as they are in use: letters, digits and a few signs, no spaces. */
const TAG = /^([\p{L}@][\p{L}\p{N}_:.@-]*)=(.*)$/su;

export interface TagText {
  tags: Tags;
  /** "node/1", null when the text names no OSM object. */
  id: string | null;
}

/**
 * Tags written as text, "amenity=fuel; fuel:diesel=yes; id=node/123", with lines folded anywhere; null when the text is
 * something else. A piece without "=" belongs to the value before it, which held a semicolon itself.
 */
export function parseTagText(text: string): TagText | null {
  const folded = text.replace(/\s+/g, ' ').trim();
  if (!TAG.test(folded.split(';', 1)[0] ?? '')) return null;
  const tags: Record<string, string> = {};
  let last = '';
  // Each piece with the semicolon before it, so that a value's own one comes back as it was.
  for (const [, semicolon = '', piece = ''] of folded.matchAll(/(^|; ?)([^;]*)/g)) {
    const match = TAG.exec(piece);
    if (match !== null) {
      const [, key = '', value = ''] = match;
      setTag(tags, key, value.trim());
      last = key;
    } else if (piece !== '') setTag(tags, last, `${tags[last]}${semicolon}${piece.trim()}`);
  }
  const named = tags.id ?? tags['@id'];
  const id = named !== undefined && parseKey(named) !== null ? named : null;
  if (id !== null) delete tags[tags.id === undefined ? '@id' : 'id'];
  return { tags, id };
}

const wordFor = (words: string, inName: boolean): WaypointWord | undefined =>
  SUPPLY_WORDS.find((row) => (!inName || row.inNames) && holdsAny(words, row.words));

/** The row for what a waypoint says by symbol, else by type, else by name; undefined when it says neither. */
export function supplyWord(waypoint: Waypoint): { row: WaypointWord; denied: boolean } | null {
  const [symbol, type, name] = [
    wholeWords(waypoint.symbol ?? ''),
    wholeWords(waypoint.type ?? ''),
    wholeWords(waypoint.name ?? ''),
  ];
  const row = wordFor(symbol, false) ?? wordFor(type, false) ?? wordFor(name, true);
  if (row === undefined) return null;
  const texts = [waypoint.symbol, waypoint.type, waypoint.comment, waypoint.description];
  const denied =
    texts.some((text) => text !== null && deniesInNote(text, false)) ||
    (waypoint.name !== null && deniesInNote(waypoint.name, true));
  return { row, denied };
}
