/**
 * The map's own images, drawn at run time from distances to simple shapes: no sprite files. An image's id says
 * what it shows and in which colours, so that it can be drawn whenever the map asks for it.
 */
export type MarkShape = 'fuel' | 'water' | 'turn';
/** Filled where the point counts, with a ring round it where a plan fills there, hollow where it does not count. */
export type MarkFill = 'filled' | 'ringed' | 'hollow';

export interface MarkImage {
  width: number;
  height: number;
  data: Uint8ClampedArray;
  pixelRatio: number;
}

type Rgb = readonly [number, number, number];

/** Pixels of the image for one pixel of the page: sharp on dense screens, clean when scaled down. */
const PIXEL_RATIO = 2;
const MARK_PX = 24;
const RINGED_PX = 32;
const HATCH_PX = 8;

/** Id of a supply's mark, or of that of a place to turn back at. */
export const markImageId = (shape: MarkShape, fill: MarkFill, colour: string, ground: string): string =>
  `mark ${shape} ${fill} ${colour} ${ground}`;

/** Id of the hatching of a dry stretch. */
export const hatchImageId = (colour: string, ground: string): string => `hatch ${colour} ${ground}`;

/** Id of the thin hatching of ground of which nothing is known; clear between its lines. */
export const groundHatchId = (colour: string): string => `ground ${colour}`;

/** Id of an image that shows nothing and only takes up room. */
export const CLEAR_IMAGE = 'clear';
const CLEAR_PX = 14;

/** The image for an id; null for an id that is none of ours. */
export function drawImage(id: string): MarkImage | null {
  if (id === CLEAR_IMAGE) return paint(CLEAR_PX, CLEAR_PX, () => [[0, 0, 0], 0]);
  const [kind, ...rest] = id.split(' ');
  if (kind === 'mark' && rest.length === 4) {
    const [shape, fill, colour, ground] = rest as [string, string, string, string];
    const distance = DISTANCES[shape];
    return distance === undefined ? null : drawMark(distance, fill, rgbOf(colour), rgbOf(ground));
  }
  const [only] = rest;
  if (kind === 'ground' && only !== undefined) return drawGroundHatch(rgbOf(only));
  if (kind === 'hatch' && rest.length === 2) {
    const [ground, stroke] = rest as [string, string];
    return drawHatch(rgbOf(ground), rgbOf(stroke));
  }
  return null;
}

/** "#c56a10" as three bytes. */
function rgbOf(hex: string): Rgb {
  const value = Number.parseInt(hex.slice(1), 16);
  return [(value >> 16) & 255, (value >> 8) & 255, value & 255];
}

/** Signed distance to a square with slightly rounded corners round the origin: negative inside. */
function squareDistance(x: number, y: number): number {
  const half = 6;
  const corner = 1.5;
  const dx = Math.abs(x) - half + corner;
  const dy = Math.abs(y) - half + corner;
  return Math.hypot(Math.max(dx, 0), Math.max(dy, 0)) + Math.min(Math.max(dx, dy), 0) - corner;
}

/** Signed distance, near enough, to a drop: a circle whose upper side is drawn out to a point. */
function dropDistance(x: number, y: number): number {
  const radius = 5.8;
  const middleY = 2.4;
  const tipY = -9.5;
  const reach = middleY - tipY;
  const circle = Math.hypot(x, y - middleY) - radius;
  // Tangents from the tip to the circle: the half angle's sine is radius over reach.
  const sine = radius / reach;
  const cosine = Math.sqrt(1 - sine * sine);
  const side = (Math.abs(x) * cosine - (y - tipY) * sine) / 1;
  const tangentY = middleY - radius * sine;
  return y <= tangentY ? Math.max(side, tipY - y) : Math.min(circle, Math.max(side, y - middleY));
}

/** Signed distance to a square that stands on its corner. */
const diamondDistance = (x: number, y: number): number => (Math.abs(x) + Math.abs(y) - 8) * Math.SQRT1_2;

const DISTANCES: Record<string, ((x: number, y: number) => number) | undefined> = {
  fuel: squareDistance,
  water: dropDistance,
  turn: diamondDistance,
} satisfies Record<MarkShape, unknown>;

/** Width of the line of a hollow mark and of a ring, and of the clear ground round every mark. */
const LINE_PX = 1.8;
const CASING_PX = 1.8;

function drawMark(
  distance: (x: number, y: number) => number,
  fill: string,
  colour: Rgb,
  ground: Rgb,
): MarkImage {
  const px = fill === 'ringed' ? RINGED_PX : MARK_PX;
  const ringPx = fill === 'ringed' ? CASING_PX + LINE_PX : 0;
  return paint(px, px, (x, y) => {
    const d = distance(x - px / 2, y - px / 2);
    const inside = coverage(d);
    const outside = coverage(d - CASING_PX - ringPx);
    const ring = coverage(d - ringPx) - coverage(d - ringPx + LINE_PX);
    const body = fill === 'hollow' ? inside - coverage(d + LINE_PX) : inside + (ringPx === 0 ? 0 : ring);
    return [mix(ground, colour, outside === 0 ? 0 : body / outside), outside];
  });
}

/** Diagonal stripes that meet themselves when repeated along the line. */
function drawHatch(colour: Rgb, ground: Rgb): MarkImage {
  return paint(HATCH_PX, HATCH_PX, (x, y) => {
    const along = (((x + y) % HATCH_PX) + HATCH_PX) % HATCH_PX;
    const stripe = coverage((Math.abs(along - HATCH_PX / 2) - HATCH_PX / 4) * Math.SQRT1_2);
    return [mix(ground, colour, stripe), 1];
  });
}

const GROUND_HATCH_PX = 14;
/** Half the width of a line of it. */
const GROUND_LINE_PX = 0.7;

/** Thin lines the other way than those of a dry stretch, with nothing between them. */
function drawGroundHatch(colour: Rgb): MarkImage {
  return paint(GROUND_HATCH_PX, GROUND_HATCH_PX, (x, y) => {
    const along = (((x - y) % GROUND_HATCH_PX) + GROUND_HATCH_PX) % GROUND_HATCH_PX;
    return [colour, coverage(Math.abs(along - GROUND_HATCH_PX / 2) * Math.SQRT1_2 - GROUND_LINE_PX)];
  });
}

/** How much of a pixel lies inside, from the signed distance of its middle, px. */
const coverage = (distancePx: number): number => Math.min(1, Math.max(0, 0.5 - distancePx * PIXEL_RATIO));

const mix = (from: Rgb, to: Rgb, share: number): Rgb => [
  from[0] + (to[0] - from[0]) * share,
  from[1] + (to[1] - from[1]) * share,
  from[2] + (to[2] - from[2]) * share,
];

function paint(
  widthPx: number,
  heightPx: number,
  at: (xPx: number, yPx: number) => readonly [Rgb, number],
): MarkImage {
  const width = widthPx * PIXEL_RATIO;
  const height = heightPx * PIXEL_RATIO;
  const data = new Uint8ClampedArray(width * height * 4);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const [rgb, alpha] = at((column + 0.5) / PIXEL_RATIO, (row + 0.5) / PIXEL_RATIO);
      // MapLibre wants colour multiplied by alpha only inside its atlas; what it takes here is plain RGBA.
      data.set([rgb[0], rgb[1], rgb[2], alpha * 255], (row * width + column) * 4);
    }
  }
  return { width, height, data, pixelRatio: PIXEL_RATIO };
}
