/** Ours: above what recorders write in a year, below what would strain a small machine. */
export const MAX_GPX_BYTES = 256 * 1024 * 1024;
export const MAX_POINTS = 3_000_000;
export const MAX_WAYPOINTS = 500_000;
/** GPX itself nests 5 deep (extensions may go further); a deeper file is an attack or damage. Ours. */
export const MAX_DEPTH = 100;
