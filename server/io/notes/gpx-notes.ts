import { SaxesParser, type SaxesTagNS } from 'saxes';
import { InputProblem } from '../../core/input/problem.ts';
import type { Waypoint } from '../../core/input/sources.ts';
import { NOTES_NAMESPACE } from '../../core/notes/files/note-rows.ts';

/** A note as a GPX file holds it: what it is of, and its text. */
export interface GpxNote {
  readonly of: string;
  /** In the order in which they were written. */
  readonly number: number;
  readonly json: string;
  readonly line: number;
}

export interface GpxNotes {
  readonly notes: readonly GpxNote[];
  /** Those that hold no note: of other programs, or of a traveller. */
  readonly waypoints: readonly Waypoint[];
}

type TextKey = 'name' | 'symbol' | 'type' | 'comment' | 'description' | 'time';
const TEXTS: ReadonlyMap<string, TextKey> = new Map([
  ['name', 'name'],
  ['sym', 'symbol'],
  ['type', 'type'],
  ['cmt', 'comment'],
  ['desc', 'description'],
  ['time', 'time'],
]);

/** Reads the notes and waypoints of a GPX file. Throws InputProblem where it is no XML; document types are refused. */
export const gpxNotes = (text: string, source: string): GpxNotes => new NotesParser(source).read(text);

/** Hears elements one by one; its fields hold what was read, and the waypoint and the text at hand. */
class NotesParser {
  readonly #parser = new SaxesParser({ xmlns: true, position: true });
  readonly #source: string;
  readonly #notes: GpxNote[] = [];
  readonly #waypoints: Waypoint[] = [];
  #waypoint: Waypoint | null = null;
  #hasNote = false;
  #text = '';

  constructor(source: string) {
    this.#source = source;
    this.#parser.on('error', (error) => this.#refuse(error.message.split('\n', 1)[0] ?? ''));
    this.#parser.on('doctype', () => this.#refuse('a document type'));
    this.#parser.on('text', (piece) => this.#hear(piece));
    this.#parser.on('cdata', (piece) => this.#hear(piece));
    this.#parser.on('opentag', (tag) => this.#start(tag));
    this.#parser.on('closetag', (tag) => this.#end(tag));
  }

  read(text: string): GpxNotes {
    this.#parser.write(text).close();
    return { notes: this.#notes.sort((a, b) => a.number - b.number), waypoints: this.#waypoints };
  }

  #hear(piece: string): void {
    this.#text += piece;
  }

  #start(tag: SaxesTagNS): void {
    this.#text = '';
    if (tag.local !== 'wpt') return;
    this.#waypoint = waypointOf(tag);
    this.#hasNote = false;
  }

  #end(tag: SaxesTagNS): void {
    if (tag.uri === NOTES_NAMESPACE && tag.local === 'note') this.#endNote(tag);
    else if (tag.local === 'wpt') this.#endWaypoint();
    else this.#endText(tag.local);
    this.#text = '';
  }

  #endNote({ attributes: { of, number } }: SaxesTagNS): void {
    const place = Number(number?.value ?? this.#notes.length);
    this.#notes.push({ of: of?.value ?? '', number: place, json: this.#text, line: this.#parser.line });
    this.#hasNote = true;
  }

  #endWaypoint(): void {
    if (this.#waypoint !== null && !this.#hasNote) this.#waypoints.push(this.#waypoint);
    this.#waypoint = null;
  }

  #endText(name: string): void {
    const key = TEXTS.get(name);
    if (this.#waypoint !== null && key !== undefined) this.#waypoint[key] = this.#text.trim() || null;
  }

  #refuse(came: string): never {
    throw new InputProblem({
      code: 'xml-broken',
      source: this.#source,
      place: `line ${this.#parser.line}`,
      came,
      expected: 'a GPX file with notes or waypoints',
      remedy: 'Export it again',
    });
  }
}

const waypointOf = ({ attributes }: SaxesTagNS): Waypoint => ({
  lon: Number(attributes.lon?.value ?? Number.NaN),
  lat: Number(attributes.lat?.value ?? Number.NaN),
  ele: null,
  name: null,
  symbol: null,
  type: null,
  comment: null,
  description: null,
  time: null,
});
