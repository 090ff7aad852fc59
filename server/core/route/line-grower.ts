import { densifyStep } from '../geodesy/densify.ts';
import { unwrapLongitude } from '../geodesy/longitude.ts';

const FIRST_ROOM = 1024;

/** Grows the measured line point by point: unwraps longitudes, densifies, sums metres along. */
export class LineGrower {
  private lons = new Float64Array(FIRST_ROOM);
  private lats = new Float64Array(FIRST_ROOM);
  private metres = new Float64Array(FIRST_ROOM);
  private eles = new Float64Array(FIRST_ROOM);
  private skipped = new Uint8Array(FIRST_ROOM);
  private count = 0;
  /** Metres so far. */
  lengthM = 0;

  private put(lon: number, lat: number, atM: number, eleM: number): void {
    if (this.count === this.lons.length) {
      const room = this.count * 2;
      const wider = (old: Float64Array) => {
        const next = new Float64Array(room);
        next.set(old);
        return next;
      };
      this.lons = wider(this.lons);
      this.lats = wider(this.lats);
      this.metres = wider(this.metres);
      this.eles = wider(this.eles);
      const next = new Uint8Array(room);
      next.set(this.skipped);
      this.skipped = next;
    }
    this.lons[this.count] = lon;
    this.lats[this.count] = lat;
    this.metres[this.count] = atM;
    this.eles[this.count] = eleM;
    this.count += 1;
  }

  /**
   * Goes on to the next point; its steps are marked as unsought when it lies further than `unsoughtOverM` away. `eleM`
   * is its elevation, NaN where not known; places put in between rise or fall evenly.
   */
  extend(lon: number, lat: number, unsoughtOverM: number, eleM = Number.NaN): void {
    if (this.count === 0) {
      this.put(lon, lat, 0, eleM);
      return;
    }
    const first = this.count - 1;
    const lastLon = this.lons[first]!;
    const step = densifyStep(lastLon, this.lats[first]!, lon, lat);
    const lastEleM = this.eles[first]!;
    for (const place of step.inner) {
      const innerEleM = lastEleM + (place.atM / step.lengthM) * (eleM - lastEleM);
      this.put(place.lon, place.lat, this.lengthM + place.atM, innerEleM);
    }
    const turnOf = step.inner.at(-1)?.lon ?? lastLon;
    this.lengthM += step.lengthM;
    this.put(unwrapLongitude(lon, turnOf), lat, this.lengthM, eleM);
    if (step.lengthM > unsoughtOverM) this.skipped.fill(1, first, this.count - 1);
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
