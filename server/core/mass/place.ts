import type { Position } from '../../contract/vehicle.ts';
import type { Place } from './statics.ts';

/** A position of the rig file as coordinates; a tank's is its middle, however full it is. */
export const placeOf = (position: Position | null | undefined): Place =>
  position === null || position === undefined
    ? { xM: null, heightM: null, sideM: null }
    : { xM: position.behindFrontAxleM, heightM: position.heightM, sideM: position.sideM ?? 0 };
