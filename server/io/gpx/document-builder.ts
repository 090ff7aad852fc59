import type { RouteDocument, RoutePart, Waypoint } from '../../core/input/sources.ts';
import { PointList } from './point-list.ts';
import type { Tally } from './tally.ts';

export type WaypointText = 'name' | 'symbol' | 'type' | 'comment' | 'description' | 'time';

/** Recorders without a fix write the start of Unix time: no time at all. */
const FILLER_YEAR = '1970';

/** Puts a RouteDocument together from what a GPX file tells in its order; counts what is empty. */
export class DocumentBuilder {
  pointCount = 0;
  private name: string | null = null;
  private readonly parts: RoutePart[] = [];
  private readonly waypoints: Waypoint[] = [];
  private part: RoutePart | null = null;
  /** Whether the open part had any segment, empty or not; a route is one itself. */
  private hadSegment = false;
  private segment: PointList | null = null;
  private waypoint: Waypoint | null = null;
  private readonly tally: Tally;
  private readonly line: () => number;

  /** `line` tells the line that is being read. */
  constructor(tally: Tally, line: () => number) {
    this.tally = tally;
    this.line = line;
  }

  get waypointCount(): number {
    return this.waypoints.length;
  }

  /** Whether a point may be added: inside a route, or a segment of a track. */
  get inSegment(): boolean {
    return this.segment !== null;
  }

  openPart(kind: RoutePart['kind']): void {
    this.part = { kind, name: null, segments: [] };
    this.parts.push(this.part);
    this.hadSegment = false;
    if (kind === 'route') this.openSegment();
  }

  closePart(): void {
    this.closeSegment();
    if (!this.hadSegment && this.part !== null && this.part.segments.length === 0) {
      this.tally.note('gpx-empty-part', this.line());
    }
    this.part = null;
  }

  openSegment(): void {
    if (this.part === null) return;
    // A segment that the file did not open is closed by one that it does.
    this.closeSegment();
    this.segment = new PointList();
    this.hadSegment = true;
  }

  closeSegment(): void {
    if (this.segment === null || this.part === null) return;
    if (this.segment.count === 0) this.tally.note('gpx-empty-part', this.line());
    else this.part.segments.push(this.segment.finish());
    this.segment = null;
  }

  addPoint(lon: number, lat: number): void {
    this.pointCount += 1;
    this.segment?.add(lon, lat);
  }

  openWaypoint(lon: number, lat: number): void {
    this.waypoint = {
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
    this.waypoints.push(this.waypoint);
  }

  closeWaypoint(): void {
    this.waypoint = null;
  }

  /** Elevation in metres of the open waypoint, or of the last point. */
  setElevation(ele: number): void {
    if (this.waypoint === null) this.segment?.setElevation(ele);
    else this.waypoint.ele ??= ele;
  }

  /** The first text for a field stays. */
  setWaypointText(field: WaypointText, text: string): void {
    if (this.waypoint === null || (field === 'time' && text.startsWith(FILLER_YEAR))) return;
    this.waypoint[field] ??= text;
  }

  /** The name of the open part, or of the document; the first one stays. */
  setName(name: string, ofPart: boolean): void {
    if (!ofPart) this.name ??= name;
    else if (this.part !== null) this.part.name ??= name;
  }

  finish(): RouteDocument {
    return {
      name: this.name,
      parts: this.parts,
      waypoints: this.waypoints,
      cautions: this.tally.cautions(),
    };
  }
}
