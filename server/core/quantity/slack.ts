/**
 * Days are floats; a gap of 3 days that comes out as 3.000000000001 has not begun a fourth.
 * The same slack keeps float noise from turning a margin of nothing into a shortage. Days or litres.
 */
export const SLACK = 1e-9;
