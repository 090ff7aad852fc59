import type { Verdict } from '../../../contract/common.ts';
import type { SheetHalt } from '../../../contract/plan.ts';
import { RADIANS_PER_DEGREE, SEMI_MAJOR_M } from '../../../core/geodesy/wgs84.ts';
import { numberAt } from '../../../core/lists/at.ts';
import { onMap, simplifyLine } from '../../../core/mapview/simplify-line.ts';
import { positionAt, stepAt } from '../../../core/route/passings/locate.ts';
import type { RouteLine } from '../../../core/route/route-line.ts';
import { numberText } from '../../../words/parts/metric.ts';
import { kmFrom } from '../../../words/parts/reader-figures.ts';
import { printed } from '../../../words/printed.ts';
import type { ExportPack } from '../../export/pack.ts';
import { plain } from '../../text/lines/plain.ts';
import { distanceFigure, withDistance } from '../../text/lines/rounding.ts';
import type { Picture } from '../model/model.ts';
import { numbered, suppliesOf } from '../parts/places.ts';
import { troubledStretches } from '../parts/trouble.ts';
import { roundStep } from './strip.ts';
import { circle, line, type Pen, type PointMm, rect, svgText, text } from './svg.ts';

const words = () => printed().paper.pictures;

const WIDTH = 88;
const MARGIN = 6;
const LEGEND_HEIGHT = 14;
/** Vertices of the drawn line at most: finer than the pen. */
const MOST_VERTICES = 400;

/** Where a place of the route's plane comes to lie. */
interface Frame {
  readonly heightMm: number;
  readonly at: (lon: number, lat: number) => PointMm;
  /** Of the plane's unit, an earth's radius at the equator. */
  readonly mmPerUnit: number;
  readonly midLat: number;
}

/** What a stretch that is not enough is drawn over the route with: width and pattern, no colour. */
const PENS: Record<Exclude<Verdict, 'enough'>, Pen> = {
  short: { widthMm: 2.4, dashMm: [0.5, 0.5] },
  'into-reserve': { widthMm: 1.5, dashMm: [2, 1] },
  unknown: { widthMm: 1.2, dashMm: [0.4, 1.2] },
};

/** The route with the numbers of the stops, north up, and where it is not known to hold. */
export function mapPicture(pack: ExportPack, mostHeightMm: number): Picture {
  const { route, planned } = pack;
  const drawn = simplifyLine(route, MOST_VERTICES);
  const frame = frameOf(drawn, mostHeightMm);
  const road = pointsOf(drawn, frame);
  const troubles = troubledStretches(planned);
  const trouble = troubles.flatMap(({ from, to, verdict }) =>
    verdict === 'enough' ? [] : [line(stretchPoints(route, frame, from.atKm, to.atKm), PENS[verdict])],
  );
  const body = [
    line(road, { widthMm: 0.5 }),
    ...trouble,
    ...stopMarks(pack, frame, road),
    ...(planned.plan.sheet.length === 0 ? endMarks(road) : []),
    ...compass(frame),
    ...legendOf(new Set(troubles.map(({ verdict }) => verdict)), frame),
  ];
  const heightMm = frame.heightMm + LEGEND_HEIGHT;
  return {
    svg: svgText({ width: WIDTH, height: heightMm }, body),
    widthMm: WIDTH,
    heightMm,
    alt: words().map(plain(route.name)),
  };
}

function frameOf({ lon, lat }: Pick<RouteLine, 'lon' | 'lat'>, mostHeightMm: number): Frame {
  const { x, y } = onMap(lon, lat);
  const [west, east] = [Math.min(...x), Math.max(...x)];
  const [south, north] = [Math.min(...y), Math.max(...y)];
  const most = { width: WIDTH - 2 * MARGIN, height: mostHeightMm - LEGEND_HEIGHT - 2 * MARGIN };
  // A route of no extent has some scale all the same.
  const mmPerUnit = Math.min(
    most.width / Math.max(east - west, 1e-6),
    most.height / Math.max(north - south, 1e-6),
  );
  const heightMm = Math.max(20, (north - south) * mmPerUnit) + 2 * MARGIN;
  const left = MARGIN + (most.width - (east - west) * mmPerUnit) / 2;
  const top = (heightMm - (north - south) * mmPerUnit) / 2;
  return {
    heightMm,
    mmPerUnit,
    midLat: (Math.min(...lat) + Math.max(...lat)) / 2,
    at: (atLon, atLat) => {
      const plane = onMap(Float64Array.of(atLon), Float64Array.of(atLat));
      return {
        x: left + (numberAt(plane.x, 0) - west) * mmPerUnit,
        y: top + (north - numberAt(plane.y, 0)) * mmPerUnit,
      };
    },
  };
}

const pointsOf = ({ lon, lat }: Pick<RouteLine, 'lon' | 'lat'>, { at }: Frame): PointMm[] =>
  Array.from(lon, (each, index) => at(each, numberAt(lat, index)));

/** Places of a stretch that are drawn: bends shorter than a hundredth of it are lost. */
const STEPS = 100;

function stretchPoints(route: RouteLine, { at }: Frame, fromKm: number, toKm: number): PointMm[] {
  return Array.from({ length: STEPS + 1 }, (_, step) => {
    const km = fromKm + ((toKm - fromKm) * step) / STEPS;
    const { lon, lat } = unwrapped(route, km);
    return at(lon, lat);
  });
}

/** A place of the line with the longitude on which the line runs there. */
function unwrapped(route: RouteLine, km: number): { lon: number; lat: number } {
  const atM = km * 1000;
  const { lon, lat } = positionAt(route, atM);
  const turns = Math.round((numberAt(route.lon, stepAt(route, atM)) - lon) / 360);
  return { lon: lon + 360 * turns, lat };
}

/** Without stops at least which end is which; one word for both where they meet. */
function endMarks(road: readonly PointMm[]): string[] {
  const [start, end] = [road[0], road.at(-1)];
  if (start === undefined || end === undefined) return [];
  const meet = Math.hypot(start.x - end.x, start.y - end.y) < 10;
  const ends = meet
    ? [{ point: start, words: words().both }]
    : [
        { point: start, words: words().start },
        { point: end, words: words().end },
      ];
  return ends.flatMap(({ point, words }) => [
    circle(point, 0.9, { ink: '#fff', pen: { widthMm: 0.4 } }),
    text({ x: Math.max(point.x, 8), y: point.y + 4 }, words, {
      sizeMm: NUMBER_SIZE,
      anchor: 'middle',
      bold: true,
    }),
  ]);
}

const NUMBER_SIZE = 2.6;
const RADIUS = 2.1;

/** A number for each halt beside its place, where no other number stands: round for water, square for fuel, both for both. */
function stopMarks(
  { route, planned }: ExportPack,
  { at, heightMm }: Frame,
  road: readonly PointMm[],
): string[] {
  const placed: PointMm[] = [];
  const named = namedHalts(planned);
  return numbered(planned.plan.sheet).flatMap(({ number, halt }) => {
    const { lon, lat } = unwrapped(route, halt.atKm);
    const place = at(lon, lat);
    const dot = circle(place, 0.7, { ink: '#000', pen: { widthMm: 0.1 } });
    const spot = named.has(number) ? freeSpot(place, { placed, road, heightMm }) : null;
    if (spot === null) return [dot];
    placed.push(spot);
    const commodities = suppliesOf(halt).map(({ commodity }) => commodity);
    const pen = { widthMm: 0.35 };
    const box = { x: spot.x - RADIUS, y: spot.y - RADIUS, width: 2 * RADIUS, height: 2 * RADIUS };
    const isWaterOnly = commodities.every((each) => each === 'water');
    return [
      line([place, spot], { widthMm: 0.2 }),
      dot,
      isWaterOnly ? circle(spot, RADIUS, { ink: '#fff', pen }) : rect(box, { ink: '#fff', pen }),
      text({ x: spot.x, y: spot.y + NUMBER_SIZE / 3 }, String(number), {
        sizeMm: number > 99 ? NUMBER_SIZE * 0.75 : NUMBER_SIZE,
        anchor: 'middle',
        bold: true,
      }),
    ];
  });
}

/** Numbers that a small map takes (ours): of more halts those from which the way is longest. */
const MOST_NUMBERS = 30;

function namedHalts({ plan }: ExportPack['planned']): Set<number> {
  const lengthOf = (halt: SheetHalt) =>
    Math.max(0, ...suppliesOf(halt).map(({ supply }) => supply.next?.lengthKm ?? 0));
  const longest = numbered(plan.sheet).toSorted((a, b) => lengthOf(b.halt) - lengthOf(a.halt));
  return new Set([...longest.slice(0, MOST_NUMBERS).map(({ number }) => number), plan.sheet.length]);
}

interface Taken {
  readonly placed: readonly PointMm[];
  readonly road: readonly PointMm[];
  readonly heightMm: number;
}

/** The nearest spot round a place on which nothing stands; null where there is none: the table has the number. */
function freeSpot(place: PointMm, { placed, road, heightMm }: Taken): PointMm | null {
  const spots = [4.5, 7, 10, 13].flatMap((far) =>
    Array.from({ length: 12 }, (_, turn) => ({
      x: place.x + far * Math.cos((turn * Math.PI) / 6),
      y: place.y + far * Math.sin((turn * Math.PI) / 6),
    })),
  );
  const isClear = (spot: PointMm, others: readonly PointMm[], mm: number) =>
    others.every(({ x, y }) => Math.hypot(x - spot.x, y - spot.y) >= mm);
  const free = spots.filter(
    (spot) =>
      spot.x > RADIUS &&
      spot.x < WIDTH - RADIUS &&
      spot.y > RADIUS &&
      spot.y < heightMm - RADIUS &&
      isClear(spot, placed, 2.3 * RADIUS),
  );
  return free.find((spot) => isClear(spot, road, 1.2 * RADIUS)) ?? free[0] ?? null;
}

/** Which way is north, and a scale that holds at the middle of the map. */
function compass({ heightMm, mmPerUnit, midLat }: Frame): string[] {
  // The plane's unit is the radius that Web Mercator goes by; it stretches by 1 / cos of the latitude.
  const mmPerKm = mmPerUnit / ((SEMI_MAJOR_M / 1000) * Math.cos(midLat * RADIANS_PER_DEGREE));
  const step = roundStep(distanceFigure(12 / mmPerKm));
  const km = kmFrom(step);
  const [x, y] = [MARGIN, heightMm + 4];
  const end = x + km * mmPerKm;
  return [
    line(
      [
        { x, y: y - 1.2 },
        { x, y },
        { x: end, y },
        { x: end, y: y - 1.2 },
      ],
      { widthMm: 0.3 },
    ),
    text({ x: end + 1.5, y }, withDistance(numberText(step)), { sizeMm: NUMBER_SIZE }),
    line(
      [
        { x: WIDTH - 5, y: y + 1 },
        { x: WIDTH - 5, y: y - 4 },
        { x: WIDTH - 6, y: y - 2.5 },
      ],
      { widthMm: 0.3 },
    ),
    text({ x: WIDTH - 3.5, y: y + 1 }, words().north, { sizeMm: NUMBER_SIZE, bold: true }),
  ];
}

const legendWords = (): Record<Exclude<Verdict, 'enough'>, string> => ({
  short: words().legend.short,
  'into-reserve': words().legend['into-reserve'],
  unknown: words().legend['not-known'],
});

function legendOf(verdicts: ReadonlySet<Verdict>, { heightMm }: Frame): string[] {
  const shown = (['short', 'into-reserve', 'unknown'] as const).filter((each) => verdicts.has(each));
  const width = (WIDTH - 2 * MARGIN) / 3;
  return shown.flatMap((verdict, index) => {
    const x = MARGIN + index * width;
    const y = heightMm + 10;
    return [
      line(
        [
          { x, y },
          { x: x + 6, y },
        ],
        PENS[verdict],
      ),
      text({ x: x + 7, y: y + 0.9 }, legendWords()[verdict], { sizeMm: 2.3 }),
    ];
  });
}
