import { densifyStep } from '../../geodesy/densify.ts';
import { unwrapLongitude } from '../../geodesy/longitude.ts';

const FIRST_ROOM = 1024;

interface Vertex {
  lon: number;
  lat: number;
  atM: number;
  eleM: number;
}

/** Grows the measured line point by point: unwraps longitudes, densifies, sums metres along. */
export class LineGrower {
  private lons = new Float64Array(FIRST_ROOM);
  private lats = new Float64Array(FIRST_ROOM);
  private metres = new Float64Array(FIRST_ROOM);
  private eles = new Float64Array(FIRST_ROOM);
  private skipped = new Uint8Array(FIRST_ROOM);
  private count = 0;
  private last: Vertex | null = null;
  /** Metres so far. */
  lengthM = 0;

  private put(vertex: Vertex): void {
    if (this.count === this.lons.length) this.widen(this.count * 2);
    this.lons[this.count] = vertex.lon;
    this.lats[this.count] = vertex.lat;
    this.metres[this.count] = vertex.atM;
    this.eles[this.count] = vertex.eleM;
    this.count += 1;
    this.last = vertex;
  }

  private widen(room: number): void {
    const wider = (old: Float64Array) => {
      const next = new Float64Array(room);
      next.set(old);
      return next;
    };
    this.lons = wider(this.lons);
    this.lats = wider(this.lats);
    this.metres = wider(this.metres);
    this.eles = wider(this.eles);
    const skipped = new Uint8Array(room);
    skipped.set(this.skipped);
    this.skipped = skipped;
  }

  /**
   * Goes on to the next point; its steps are marked as unsought when it lies further than `unsoughtOverM` away. `eleM`
   * is its elevation, NaN where not known; places put in between rise or fall evenly.
   */
  extend(lon: number, lat: number, unsoughtOverM: number, eleM = Number.NaN): void {
    const { last } = this;
    if (last === null) {
      this.put({ lon, lat, atM: 0, eleM });
      return;
    }
    const firstStep = this.count - 1;
    const { lengthM, inner } = densifyStep(last.lon, last.lat, lon, lat);
    for (const place of inner) {
      const innerEleM = last.eleM + (place.atM / lengthM) * (eleM - last.eleM);
      this.put({ lon: place.lon, lat: place.lat, atM: this.lengthM + place.atM, eleM: innerEleM });
    }
    const turnOf = inner.at(-1)?.lon ?? last.lon;
    this.lengthM += lengthM;
    this.put({ lon: unwrapLongitude(lon, turnOf), lat, atM: this.lengthM, eleM });
    if (lengthM > unsoughtOverM) this.skipped.fill(1, firstStep, this.count - 1);
  }

  /** The arrays cut to their length; `unsought` has one entry a step. */
  finish(): {
    lon: Float64Array;
    lat: Float64Array;
    atM: Float64Array;
    eleM: Float64Array | null;
    unsought: Uint8Array;
  } {
    const eleM = this.eles.slice(0, this.count);
    return {
      lon: this.lons.slice(0, this.count),
      lat: this.lats.slice(0, this.count),
      atM: this.metres.slice(0, this.count),
      eleM: eleM.every(Number.isNaN) ? null : eleM,
      unsought: this.skipped.slice(0, Math.max(0, this.count - 1)),
    };
  }
}
