import type { RouteSegment } from '../../core/input/sources.ts';

const FIRST_ROOM = 256;

/** Points of one segment as they are read. */
export class PointList {
  private room = FIRST_ROOM;
  private lons = new Float64Array(FIRST_ROOM);
  private lats = new Float64Array(FIRST_ROOM);
  private eles = new Float64Array(FIRST_ROOM);
  count = 0;

  /** Adds a point without an elevation. */
  add(lon: number, lat: number): void {
    if (this.count === this.room) this.widen();
    this.lons[this.count] = lon;
    this.lats[this.count] = lat;
    this.eles[this.count] = Number.NaN;
    this.count += 1;
  }

  /** Sets the elevation of the last point, metres. */
  setElevation(ele: number): void {
    this.eles[this.count - 1] = ele;
  }

  finish(): RouteSegment {
    return {
      lon: this.lons.slice(0, this.count),
      lat: this.lats.slice(0, this.count),
      ele: this.eles.slice(0, this.count),
    };
  }

  private widen(): void {
    this.room *= 2;
    const wider = (old: Float64Array) => {
      const next = new Float64Array(this.room);
      next.set(old);
      return next;
    };
    this.lons = wider(this.lons);
    this.lats = wider(this.lats);
    this.eles = wider(this.eles);
  }
}
