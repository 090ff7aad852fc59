import { SaxesParser, type SaxesTagPlain } from 'saxes';
import { InputProblem, type ProblemCode } from '../../core/problem.ts';
import type { RouteDocument, RoutePart, Waypoint } from '../../core/sources.ts';
import { decimalOf, readCoordinate } from './coordinate.ts';
import { MAX_DEPTH, MAX_POINTS, MAX_WAYPOINTS } from './limits.ts';
import { PointList } from './point-list.ts';
import { Tally } from './tally.ts';

type WaypointText = 'name' | 'symbol' | 'type' | 'comment' | 'description' | 'time';
const WAYPOINT_TEXTS = new Map<string, WaypointText>([
  ['name', 'name'],
  ['sym', 'symbol'],
  ['type', 'type'],
  ['cmt', 'comment'],
  ['desc', 'description'],
  ['time', 'time'],
]);

/** Recorders without a fix write the start of Unix time: no time at all. */
const FILLER_YEAR = '1970';

/**
 * Takes the text of a GPX file piece by piece and makes a RouteDocument of it. Elements of other namespaces and all
 * `extensions` are skipped with what they hold. Throws InputProblem with the line and column.
 */
export class GpxParser {
  private readonly parser = new SaxesParser({ xmlns: false, position: true });
  private readonly source: string;
  private readonly tally = new Tally();
  private readonly open: string[] = [];
  /** Prefix of the root with its colon, '' for none: elements with another prefix are foreign. */
  private prefix = '';
  /** Depth of the outermost element being skipped, 0 when none is. */
  private skipFrom = 0;
  private rootClosed = false;
  private text = '';
  private points = 0;
  private name: string | null = null;
  private readonly parts: RoutePart[] = [];
  private readonly waypoints: Waypoint[] = [];
  private part: RoutePart | null = null;
  /** Whether the open track had any segment, empty or not. */
  private hadSegment = false;
  private segment: PointList | null = null;
  private waypoint: Waypoint | null = null;
  private readonly hear = (text: string): void => {
    this.text += text;
  };

  constructor(source: string) {
    this.source = source;
    this.parser.on('error', (error) => this.broken(error));
    this.parser.on('doctype', (doctype) => this.refuseDoctype(doctype));
    this.parser.on('opentag', (tag) => this.start(tag));
    this.parser.on('closetag', (tag) => this.end(tag));
  }

  write(text: string): void {
    if (text.includes('\ufffd')) this.tally.note('gpx-damaged-text', this.parser.line);
    this.parser.write(text);
  }

  /** Ends the file. Refuses one that breaks off, and one with neither points nor waypoints. */
  finish(): RouteDocument {
    if (this.open.length > 0) {
      this.refuse(
        'xml-broken',
        `a file that ends inside <${this.open.at(-1)}>`,
        'a whole file, ending in </gpx>',
        'The file was cut off: copy or download it again',
      );
    }
    if (this.rootClosed) this.parser.close();
    else this.refuse('empty-file', 'a file without any element', 'a GPX file', 'Export the route again');
    if (this.points === 0 && this.waypoints.length === 0) {
      this.refuse(
        'gpx-no-points',
        'a GPX file without any point',
        'a track, a route or waypoints',
        'Export the route again and check that it is not empty',
        null,
      );
    }
    return {
      name: this.name,
      parts: this.parts,
      waypoints: this.waypoints,
      cautions: this.tally.cautions(),
    };
  }

  private here(): string {
    return `line ${this.parser.line}, column ${this.parser.column}`;
  }

  private refuse(
    code: ProblemCode,
    came: string,
    expected: string,
    remedy: string,
    place: string | null = this.here(),
  ): never {
    throw new InputProblem({ code, source: this.source, place, came, expected, remedy });
  }

  private broken(error: Error): never {
    const what = error.message.replace(/^(?:undefined:)?\d+:\d+:\s*/, '').replace(/\.$/, '');
    this.refuse(
      'xml-broken',
      `XML that is not well-formed (${what})`,
      'well-formed XML',
      'Export the file again',
    );
  }

  private refuseDoctype(doctype: string): never {
    if (/^\s*html\b/i.test(doctype)) {
      this.refuse('html-page', 'a web page', 'a GPX file', 'Download the file itself again');
    }
    this.refuse(
      'xml-entity',
      'a document type declaration',
      'GPX, which has none',
      'Take the <!DOCTYPE …> out, or export the file again',
    );
  }

  private start(tag: SaxesTagPlain): void {
    const { open } = this;
    if (open.length >= MAX_DEPTH) {
      this.refuse(
        'xml-broken',
        `elements nested over ${MAX_DEPTH} deep`,
        'a GPX file',
        'Export the file again',
      );
    }
    const parent = open.at(-1);
    if (parent === undefined) {
      this.startRoot(tag);
      return;
    }
    const name = this.localName(tag.name);
    open.push(name ?? tag.name);
    if (this.skipFrom > 0) {
      if (tag.name.endsWith(':rpt') || tag.name === 'rpt')
        this.tally.note('gpx-shape-points', this.parser.line);
      return;
    }
    if (name === null || name === 'extensions') {
      this.skipFrom = open.length;
      return;
    }
    this.startElement(name, parent, tag.attributes);
  }

  private localName(name: string): string | null {
    if (this.prefix === '') return name.includes(':') ? null : name;
    return name.startsWith(this.prefix) ? name.slice(this.prefix.length) : null;
  }

  private startRoot(tag: SaxesTagPlain): void {
    const colon = tag.name.indexOf(':');
    this.prefix = tag.name.slice(0, colon + 1);
    const name = tag.name.slice(colon + 1);
    if (name.toLowerCase() === 'html') {
      this.refuse('html-page', 'a web page', 'a GPX file', 'Download the file itself again');
    }
    if (name !== 'gpx') {
      this.refuse(
        'not-gpx',
        `XML with the root <${tag.name.slice(0, 60)}>`,
        '<gpx>',
        'Export the route as GPX',
      );
    }
    if (tag.attributes.version === '1.0') this.tally.note('gpx-old', this.parser.line);
    else if (tag.attributes.version !== '1.1') this.tally.note('gpx-version', this.parser.line);
    this.open.push('gpx');
  }

  private startElement(name: string, parent: string, attributes: Record<string, string>): void {
    switch (name) {
      case 'trkpt':
        this.startTrackPoint(parent, attributes);
        return;
      case 'rtept':
        if (parent === 'rte' && this.segment !== null) this.addPoint(attributes);
        else this.tally.note('gpx-stray-points', this.parser.line);
        return;
      case 'wpt':
        if (parent === 'gpx') this.startWaypoint(attributes);
        else this.tally.note('gpx-stray-points', this.parser.line);
        return;
      case 'trk':
      case 'rte':
        if (parent === 'gpx') this.startPart(name);
        return;
      case 'trkseg':
        if (parent === 'trk' && this.part !== null) this.startSegment();
        return;
      default:
        if (this.wants(name, parent)) this.listen();
    }
  }

  private startPart(name: 'trk' | 'rte'): void {
    this.part = { kind: name === 'trk' ? 'track' : 'route', name: null, segments: [] };
    this.parts.push(this.part);
    this.hadSegment = name === 'rte';
    if (name === 'rte') this.segment = new PointList();
  }

  private startSegment(): void {
    // A segment that the file did not open is closed by one that it does.
    if (this.segment !== null) this.endSegment();
    this.segment = new PointList();
    this.hadSegment = true;
  }

  private startTrackPoint(parent: string, attributes: Record<string, string>): void {
    if (this.part !== null && parent === 'trk') {
      this.tally.note('gpx-no-segment', this.parser.line);
      this.segment ??= new PointList();
      this.addPoint(attributes);
    } else if (parent === 'trkseg' && this.segment !== null) {
      this.addPoint(attributes);
    } else {
      this.tally.note('gpx-stray-points', this.parser.line);
    }
  }

  private coordinate(attributes: Record<string, string>): { lon: number; lat: number } {
    const read = readCoordinate(attributes);
    if (read.fault !== null) {
      this.refuse('coordinate-out-of-range', read.fault.came, read.fault.expected, read.fault.remedy);
    }
    if (read.lon === 180) this.tally.note('gpx-longitude-180', this.parser.line);
    return read;
  }

  private addPoint(attributes: Record<string, string>): void {
    const { lon, lat } = this.coordinate(attributes);
    this.points += 1;
    if (this.points > MAX_POINTS) {
      this.refuse('too-large', `over ${MAX_POINTS} points`, 'fewer', 'Thin the route, or split it');
    }
    this.segment?.add(lon, lat);
  }

  private startWaypoint(attributes: Record<string, string>): void {
    const { lon, lat } = this.coordinate(attributes);
    if (this.waypoints.length >= MAX_WAYPOINTS) {
      this.refuse('too-large', `over ${MAX_WAYPOINTS} waypoints`, 'fewer', 'Split the file');
    }
    const waypoint: Waypoint = {
      lon,
      lat,
      ele: null,
      name: null,
      symbol: null,
      type: null,
      comment: null,
      description: null,
      time: null,
    };
    this.waypoint = waypoint;
    this.waypoints.push(waypoint);
  }

  /** Whether the text of an element is kept; asked again at its end. */
  private wants(name: string, parent: string): boolean {
    if (name === 'ele') return parent === 'trkpt' || parent === 'rtept' || parent === 'wpt';
    if (parent === 'wpt') return this.waypoint !== null && WAYPOINT_TEXTS.has(name);
    return (
      name === 'name' && (parent === 'trk' || parent === 'rte' || parent === 'metadata' || parent === 'gpx')
    );
  }

  private listen(): void {
    this.text = '';
    this.parser.on('text', this.hear);
    this.parser.on('cdata', this.hear);
  }

  private end(tag: SaxesTagPlain): void {
    const { open } = this;
    const depth = open.length;
    const name = open.pop();
    if (depth === 1) this.rootClosed = true;
    if (this.skipFrom > 0) {
      if (depth === this.skipFrom) this.skipFrom = 0;
      return;
    }
    if (name === undefined || tag.name.length === 0) return;
    const parent = open.at(-1) ?? '';
    if (name === 'wpt' && parent === 'gpx') this.waypoint = null;
    else if (name === 'trkseg' && parent === 'trk') this.endSegment();
    else if ((name === 'trk' || name === 'rte') && parent === 'gpx') this.endPart();
    else if (this.wants(name, parent)) this.take(name, parent);
  }

  private endSegment(): void {
    if (this.segment === null || this.part === null) return;
    if (this.segment.count === 0) this.tally.note('gpx-empty-part', this.parser.line);
    else this.part.segments.push(this.segment.finish());
    this.segment = null;
  }

  private endPart(): void {
    this.endSegment();
    if (!this.hadSegment && this.part !== null && this.part.segments.length === 0) {
      this.tally.note('gpx-empty-part', this.parser.line);
    }
    this.part = null;
  }

  private take(name: string, parent: string): void {
    this.parser.off('text');
    this.parser.off('cdata');
    if (name === 'ele') {
      this.takeElevation(parent);
      return;
    }
    const text = this.text.trim();
    if (text === '') return;
    const field = WAYPOINT_TEXTS.get(name);
    if (this.waypoint !== null && field !== undefined && parent === 'wpt') {
      if (field === 'time' && text.startsWith(FILLER_YEAR)) return;
      this.waypoint[field] ??= text;
    } else if (this.part !== null) {
      this.part.name ??= text;
    } else {
      this.name ??= text;
    }
  }

  private takeElevation(parent: string): void {
    const ele = decimalOf(this.text);
    if (Number.isNaN(ele)) {
      if (this.text.trim() !== '') this.tally.note('gpx-elevation-unread', this.parser.line);
    } else if (parent === 'wpt') {
      if (this.waypoint !== null) this.waypoint.ele ??= ele;
    } else {
      this.segment?.setElevation(ele);
    }
  }
}
