import { SaxesParser } from 'saxes';
import type { Bbox } from '../../../contract/common.ts';
import { InputProblem } from '../../../core/input/problem.ts';
import type { OsmType, ParsedElement, RawElement } from '../extract/raw-element.ts';
import { setTag } from '../extract/set-tag.ts';
import type { PapersWritten } from '../extract/whole-file/papers.ts';
import { utf16Of } from '../source/sniff.ts';

export interface OsmXmlHandlers {
  element: (parsed: ParsedElement) => void;
  /** Each declared box, as written: [west, south, east, north], unchecked. */
  bounds?: (box: Bbox) => void;
  /** What the server that wrote the file remarked. */
  remark?: (text: string) => void;
  /** What the file says of its date and source, piece by piece as it comes. */
  papers?: (written: PapersWritten) => void;
  /** The root has no version attribute. */
  noVersion?: () => void;
}

type Attributes = Record<string, string>;
type Member = NonNullable<RawElement['members']>[number];

/** The only version of the OSM data format in use since 2009. */
const OSM_VERSION = '0.6';
const OSM_TYPES: ReadonlySet<string> = new Set(['node', 'way', 'relation']);
const isOsmType = (text: string | undefined): text is OsmType => text !== undefined && OSM_TYPES.has(text);

/** Stands for what is not there: no box is made of it. */
const NO_NUMBER = Number.NaN;

/** A remark is a sentence; what follows is not kept. Ours. */
const REMARK_MAX_CHARACTERS = 2_000;

class OsmXmlReader {
  readonly #source: string;
  readonly #handlers: OsmXmlHandlers;
  readonly #parser = new SaxesParser<{ position: true; xmlns: false }>({ position: true, xmlns: false });
  #depth = 0;
  #element: RawElement | null = null;
  #deleted = false;
  #member: Member | null = null;
  /** The text of a remark or a note that is open. */
  #text: { of: 'remark' | 'note'; written: string } | null = null;

  constructor(source: string, handlers: OsmXmlHandlers) {
    this.#source = source;
    this.#handlers = handlers;
    this.#parser.on('error', (error) => {
      throw this.#refuse(
        'xml-broken',
        error.message.replace(/^.*?\d+:\d+: /, ''),
        'well-formed XML to its end',
      );
    });
    this.#parser.on('doctype', () => {
      throw this.#refuse('xml-entity', 'a document type with entities', 'plain OSM XML, which has none');
    });
    this.#parser.on('opentag', (tag) => this.#open(tag.name, tag.attributes, tag.isSelfClosing));
    this.#parser.on('closetag', () => this.#close());
  }

  write(text: string): void {
    this.#parser.write(text);
  }

  end(): void {
    this.#parser.close();
  }

  #refuse(code: 'xml-broken' | 'xml-entity' | 'osm-broken', came: string, expected: string): InputProblem {
    const place = `line ${this.#parser.line}, column ${this.#parser.column}`;
    return new InputProblem({
      code,
      source: this.#source,
      place,
      came,
      expected,
      remedy: 'Download or export the extract again',
    });
  }

  #open(name: string, attributes: Attributes, selfClosing: boolean): void {
    this.#depth += 1;
    if (this.#depth === 1) this.#openRoot(name, attributes);
    else if (this.#depth === 2) this.#openTop(name, attributes, selfClosing);
    else if (this.#element !== null && this.#depth === 3) this.#openPart(this.#element, name, attributes);
    else if (this.#member !== null && this.#depth === 4 && name === 'nd') {
      this.#member.geometry ??= [];
      this.#member.geometry.push(pairOf(attributes));
    }
  }

  #openRoot(name: string, attributes: Attributes): void {
    if (name !== 'osm') throw this.#refuse('osm-broken', `a root element <${name}>`, '<osm>');
    const version = attributes.version;
    if (version === undefined) this.#handlers.noVersion?.();
    else if (version !== OSM_VERSION) {
      throw this.#refuse('osm-broken', `OSM XML of version ${version}`, `version ${OSM_VERSION}`);
    }
    const { timestamp, osm_base, copyright, attribution, license, licence } = attributes;
    this.#handlers.papers?.({
      asOf: timestamp ?? osm_base,
      attribution: copyright ?? attribution,
      licence: licence ?? license,
    });
  }

  #openTop(name: string, attributes: Attributes, selfClosing: boolean): void {
    if (isOsmType(name)) {
      this.#element = this.#elementOf(name, attributes);
      this.#deleted = attributes.visible === 'false' || attributes.action === 'delete';
    } else if (name === 'bounds') {
      this.#handlers.bounds?.(boxOf(attributes));
    } else if (name === 'bound' && attributes.box !== undefined) {
      // The older way to write it: "south,west,north,east".
      const [south = NO_NUMBER, west = NO_NUMBER, north = NO_NUMBER, east = NO_NUMBER] = attributes.box
        .split(',')
        .map(Number);
      this.#handlers.bounds?.([west, south, east, north]);
    } else if (name === 'meta') {
      this.#handlers.papers?.({ asOf: attributes.osm_base });
    } else if ((name === 'remark' || name === 'note') && !selfClosing) {
      this.#openText(name);
    } else if (name === 'modify' || name === 'create' || name === 'delete') {
      throw this.#refuse('osm-broken', `a <${name}> section, as in a change file`, 'an extract');
    }
  }

  #openText(of: 'remark' | 'note'): void {
    this.#text = { of, written: '' };
    this.#parser.on('text', (text) => {
      if (this.#text === null) return;
      this.#text.written = (this.#text.written + text).slice(0, REMARK_MAX_CHARACTERS);
    });
  }

  #elementOf(type: OsmType, attributes: Attributes): RawElement {
    const id = Number(attributes.id);
    if (attributes.id === undefined || attributes.id.trim() === '' || !Number.isSafeInteger(id)) {
      throw this.#refuse('osm-broken', `a ${type} with id "${attributes.id ?? ''}"`, 'a whole number');
    }
    const element: RawElement = { type, id };
    if (type === 'node') {
      const at = pairOf(attributes);
      if (at !== null) Object.assign(element, at);
    }
    if (type === 'relation') element.members = [];
    const version = Number(attributes.version);
    if (attributes.version !== undefined && Number.isSafeInteger(version)) element.version = version;
    if (attributes.timestamp !== undefined) element.timestamp = attributes.timestamp;
    return element;
  }

  #openPart(element: RawElement, name: string, attributes: Attributes): void {
    if (name === 'tag') {
      if (attributes.k === undefined || attributes.v === undefined) {
        throw this.#refuse('osm-broken', 'a <tag> without k or v', 'both');
      }
      element.tags ??= {};
      setTag(element.tags, attributes.k, attributes.v);
    } else if (name === 'nd' && element.type === 'way') this.#openNode(element, attributes);
    else if (name === 'member' && element.type === 'relation') this.#openMember(element, attributes);
    else if (name === 'center') {
      const at = pairOf(attributes);
      if (at !== null) element.center = at;
    } else if (name === 'bounds') {
      const [minlon, minlat, maxlon, maxlat] = boxOf(attributes);
      element.bounds = { minlat, minlon, maxlat, maxlon };
    }
  }

  #openNode(way: RawElement, attributes: Attributes): void {
    const at = pairOf(attributes);
    const place = (way.nodes ?? way.geometry ?? []).length;
    if (attributes.ref !== undefined) {
      way.nodes ??= [];
      way.nodes.push(this.#refOf(attributes.ref));
    }
    if (at !== null) {
      way.geometry ??= Array.from({ length: place }, () => null);
      way.geometry.push(at);
    } else if (way.geometry !== undefined) way.geometry.push(null);
  }

  #openMember(relation: RawElement, attributes: Attributes): void {
    if (!isOsmType(attributes.type)) {
      throw this.#refuse(
        'osm-broken',
        `a member of type "${attributes.type ?? ''}"`,
        'node, way or relation',
      );
    }
    if (attributes.ref === undefined)
      throw this.#refuse('osm-broken', 'a member without ref', 'the id of one');
    this.#member = { type: attributes.type, ref: this.#refOf(attributes.ref), role: attributes.role ?? '' };
    const at = pairOf(attributes);
    if (at !== null) Object.assign(this.#member, at);
    relation.members?.push(this.#member);
  }

  #refOf(text: string): number {
    const ref = Number(text);
    if (text.trim() === '' || !Number.isSafeInteger(ref)) {
      throw this.#refuse('osm-broken', `a reference "${text}"`, 'a whole number');
    }
    return ref;
  }

  #close(): void {
    if (this.#depth === 2) this.#closeTop();
    else if (this.#depth === 3) this.#member = null;
    this.#depth -= 1;
  }

  #closeTop(): void {
    if (this.#element !== null) this.#handlers.element({ element: this.#element, deleted: this.#deleted });
    else if (this.#text !== null) {
      const { of, written } = this.#text;
      if (of === 'remark') this.#handlers.remark?.(written.trim());
      else this.#handlers.papers?.({ attribution: written });
      this.#parser.off('text');
    }
    this.#element = null;
    this.#text = null;
  }
}

const numberOf = (text: string | undefined): number =>
  text === undefined || text.trim() === '' ? Number.NaN : Number(text);

/** The position in `lat` and `lon`; null when neither is there, NaN for what is no number. */
function pairOf(attributes: Attributes): { lat: number; lon: number } | null {
  if (attributes.lat === undefined && attributes.lon === undefined) return null;
  return { lat: numberOf(attributes.lat), lon: numberOf(attributes.lon) };
}

const boxOf = (attributes: Attributes): Bbox => [
  numberOf(attributes.minlon),
  numberOf(attributes.minlat),
  numberOf(attributes.maxlon),
  numberOf(attributes.maxlat),
];

/**
 * Reads OSM XML piece by piece and tells the handlers what comes, in the file's order. Elements and attributes that
 * OSM data does not have are passed over.
 * Throws InputProblem with line and column: `xml-broken` (malformed, cut short, not UTF-8), `xml-entity`,
 * `osm-broken` (wrong version, ids or members that are none).
 */
export async function parseOsmXml(
  pieces: AsyncIterable<Buffer>,
  source: string,
  handlers: OsmXmlHandlers,
): Promise<void> {
  const reader = new OsmXmlReader(source, handlers);
  let decoder: InstanceType<typeof TextDecoder> | null = null;
  const decode = (piece?: Buffer): string => {
    if (decoder === null) decoder = new TextDecoder((piece && utf16Of(piece)) ?? 'utf-8', { fatal: true });
    try {
      return piece === undefined ? decoder.decode() : decoder.decode(piece, { stream: true });
    } catch {
      throw new InputProblem({
        code: 'xml-broken',
        source,
        came: 'bytes that are not UTF-8 text',
        expected: 'UTF-8',
        remedy: 'Save it as UTF-8',
      });
    }
  };
  for await (const piece of pieces) reader.write(decode(piece));
  reader.write(decode());
  reader.end();
}
