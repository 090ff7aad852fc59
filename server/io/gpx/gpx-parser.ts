import { SaxesParser, type SaxesTagPlain } from 'saxes';
import { InputProblem, type ProblemParts } from '../../core/input/problem.ts';
import type { RouteDocument } from '../../core/input/sources.ts';
import { decimalOf, readCoordinate } from './coordinate.ts';
import { DocumentBuilder, type WaypointText } from './document-builder.ts';
import { MAX_DEPTH, MAX_POINTS, MAX_WAYPOINTS } from './limits.ts';
import { Tally } from './tally.ts';

const WAYPOINT_TEXTS = new Map<string, WaypointText>([
  ['name', 'name'],
  ['sym', 'symbol'],
  ['type', 'type'],
  ['cmt', 'comment'],
  ['desc', 'description'],
  ['time', 'time'],
]);

/** Whether an element is a track or a route. */
const isPart = (name: string, parent: string): boolean =>
  (name === 'trk' || name === 'rte') && parent === 'gpx';

/** Whether the text of an element is kept. */
function keepsText(name: string, parent: string): boolean {
  if (name === 'ele') return parent === 'trkpt' || parent === 'rtept' || parent === 'wpt';
  if (parent === 'wpt') return WAYPOINT_TEXTS.has(name);
  return (
    name === 'name' && (parent === 'trk' || parent === 'rte' || parent === 'metadata' || parent === 'gpx')
  );
}

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
  private readonly builder = new DocumentBuilder(this.tally, () => this.parser.line);
  private readonly hear = (text: string): void => {
    this.text += text;
  };

  constructor(source: string) {
    this.source = source;
    this.parser.on('error', (error) => this.broken(error));
    this.parser.on('doctype', (doctype) => this.refuseDoctype(doctype));
    this.parser.on('opentag', (tag) => this.start(tag));
    this.parser.on('closetag', () => this.end());
  }

  write(text: string): void {
    if (text.includes('\ufffd')) this.tally.note('gpx-damaged-text', this.parser.line);
    this.parser.write(text);
  }

  /** Ends the file. Refuses one that breaks off, and one with neither points nor waypoints. */
  finish(): RouteDocument {
    if (this.open.length > 0) {
      this.refuse({
        code: 'xml-broken',
        came: `a file that ends inside <${this.open.at(-1)}>`,
        expected: 'a whole file, ending in </gpx>',
        remedy: 'The file was cut off: copy or download it again',
      });
    }
    if (this.rootClosed) this.parser.close();
    else
      this.refuse({
        code: 'empty-file',
        came: 'a file without any element',
        expected: 'a GPX file',
        remedy: 'Export the route again',
      });
    if (this.builder.pointCount === 0 && this.builder.waypointCount === 0) {
      this.refuse({
        code: 'gpx-no-points',
        came: 'a GPX file without any point',
        expected: 'a track, a route or waypoints',
        remedy: 'Export the route again and check that it is not empty',
        place: null,
      });
    }
    return this.builder.finish();
  }

  private here(): string {
    return `line ${this.parser.line}, column ${this.parser.column}`;
  }

  /** Refuses the file, here unless `place` says otherwise. */
  private refuse(parts: ProblemParts): never {
    throw new InputProblem({ source: this.source, place: this.here(), ...parts });
  }

  private broken(error: Error): never {
    const what = error.message.replace(/^(?:undefined:)?\d+:\d+:\s*/, '').replace(/\.$/, '');
    this.refuse({
      code: 'xml-broken',
      came: `XML that is not well-formed (${what})`,
      expected: 'well-formed XML',
      remedy: 'Export the file again',
    });
  }

  private refuseDoctype(doctype: string): never {
    if (/^\s*html\b/i.test(doctype)) {
      this.refuse({
        code: 'html-page',
        came: 'a web page',
        expected: 'a GPX file',
        remedy: 'Download the file itself again',
      });
    }
    this.refuse({
      code: 'xml-entity',
      came: 'a document type declaration',
      expected: 'GPX, which has none',
      remedy: 'Take the <!DOCTYPE …> out, or export the file again',
    });
  }

  private start(tag: SaxesTagPlain): void {
    const { open } = this;
    if (open.length >= MAX_DEPTH) {
      this.refuse({
        code: 'xml-broken',
        came: `elements nested over ${MAX_DEPTH} deep`,
        expected: 'a GPX file',
        remedy: 'Export the file again',
      });
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
      this.refuse({
        code: 'html-page',
        came: 'a web page',
        expected: 'a GPX file',
        remedy: 'Download the file itself again',
      });
    }
    if (name !== 'gpx') {
      this.refuse({
        code: 'not-gpx',
        came: `XML with the root <${tag.name.slice(0, 60)}>`,
        expected: '<gpx>',
        remedy: 'Export the route as GPX',
      });
    }
    if (tag.attributes.version === '1.0') this.tally.note('gpx-old', this.parser.line);
    else if (tag.attributes.version !== '1.1') this.tally.note('gpx-version', this.parser.line);
    this.open.push('gpx');
  }

  private startElement(name: string, parent: string, attributes: Record<string, string>): void {
    const { builder } = this;
    if (name === 'trkpt' || name === 'rtept') this.startPoint(name, parent, attributes);
    else if (name === 'wpt' && parent !== 'gpx') this.skipStray();
    else if (name === 'wpt') this.startWaypoint(attributes);
    else if (name === 'trkseg' && parent === 'trk') builder.openSegment();
    else if (isPart(name, parent)) builder.openPart(name === 'trk' ? 'track' : 'route');
    else if (keepsText(name, parent)) this.listen();
  }

  private startPoint(name: 'trkpt' | 'rtept', parent: string, attributes: Record<string, string>): void {
    const { builder } = this;
    if (name === 'trkpt' && parent === 'trk') {
      this.tally.note('gpx-no-segment', this.parser.line);
      if (!builder.inSegment) builder.openSegment();
    } else if (parent !== (name === 'trkpt' ? 'trkseg' : 'rte') || !builder.inSegment) {
      this.skipStray();
      return;
    }
    this.addPoint(attributes);
  }

  private skipStray(): void {
    this.tally.note('gpx-stray-points', this.parser.line);
    this.skipFrom = this.open.length;
  }

  private coordinate(attributes: Record<string, string>): { lon: number; lat: number } {
    const read = readCoordinate(attributes);
    if (read.fault !== null) {
      this.refuse({
        code: 'coordinate-out-of-range',
        came: read.fault.came,
        expected: read.fault.expected,
        remedy: read.fault.remedy,
      });
    }
    if (read.lon === 180) this.tally.note('gpx-longitude-180', this.parser.line);
    return read;
  }

  private addPoint(attributes: Record<string, string>): void {
    const { lon, lat } = this.coordinate(attributes);
    if (this.builder.pointCount >= MAX_POINTS) {
      this.refuse({
        code: 'too-large',
        came: `over ${MAX_POINTS} points`,
        expected: 'fewer',
        remedy: 'Thin the route, or split it',
      });
    }
    this.builder.addPoint(lon, lat);
  }

  private startWaypoint(attributes: Record<string, string>): void {
    const { lon, lat } = this.coordinate(attributes);
    if (this.builder.waypointCount >= MAX_WAYPOINTS) {
      this.refuse({
        code: 'too-large',
        came: `over ${MAX_WAYPOINTS} waypoints`,
        expected: 'fewer',
        remedy: 'Split the file',
      });
    }
    this.builder.openWaypoint(lon, lat);
  }

  private listen(): void {
    this.text = '';
    this.parser.on('text', this.hear);
    this.parser.on('cdata', this.hear);
  }

  private end(): void {
    const { open } = this;
    const depth = open.length;
    const name = open.pop();
    if (depth === 1) this.rootClosed = true;
    if (this.skipFrom > 0) {
      if (depth === this.skipFrom) this.skipFrom = 0;
      return;
    }
    if (name === undefined) return;
    const parent = open.at(-1) ?? '';
    if (name === 'wpt' && parent === 'gpx') this.builder.closeWaypoint();
    else if (name === 'trkseg' && parent === 'trk') this.builder.closeSegment();
    else if (isPart(name, parent)) this.builder.closePart();
    else if (keepsText(name, parent)) this.take(name, parent);
  }

  private take(name: string, parent: string): void {
    this.parser.off('text');
    this.parser.off('cdata');
    const text = this.text.trim();
    if (text === '') return;
    const field = parent === 'wpt' ? WAYPOINT_TEXTS.get(name) : undefined;
    if (name === 'ele') {
      const ele = decimalOf(text);
      if (Number.isNaN(ele)) this.tally.note('gpx-elevation-unread', this.parser.line);
      else this.builder.setElevation(ele);
    } else if (field !== undefined) {
      this.builder.setWaypointText(field, text);
    } else {
      this.builder.setName(text, parent === 'trk' || parent === 'rte');
    }
  }
}
