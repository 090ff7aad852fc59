/** The same meridian in -180 to 180 degrees; values already there, 180 among them, stay as they are. */
export function wrapLongitude(lon: number): number {
  if (lon >= -180 && lon <= 180) return lon;
  const turned = ((((lon + 180) % 360) + 360) % 360) - 180;
  return turned;
}

/** The same meridian as close to `near` as can be: within 180 degrees of it, whatever turn `near` is on. */
export function unwrapLongitude(lon: number, near: number): number {
  return lon - 360 * Math.round((lon - near) / 360);
}
