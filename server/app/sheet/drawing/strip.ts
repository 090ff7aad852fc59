import type { Commodity } from '../../../contract/common.ts';
import { distanceIn, kmFrom } from '../../../words/parts/reader-figures.ts';
import { printed } from '../../../words/printed.ts';
import type { PlannedTrip } from '../../plan-trip.ts';
import { shortened } from '../../text/lines/plain.ts';
import { kmBefore, kmText } from '../../text/lines/rounding.ts';
import type { Picture } from '../model/model.ts';
import { nameText, numbered } from '../parts/places.ts';
import { troubledStretches } from '../parts/trouble.ts';
import { type LevelAt, levelRuns, withoutCover } from './levels.ts';
import { area, type BoxMm, dots, hatch, line, rect, svgText, text } from './svg.ts';

const words = () => printed().paper.pictures;

/** The strip in millimetres: the road in the middle, a bar on each side of it, names beyond them. */
const WIDTH = 88;
const ROAD = { leftX: 41.5, rightX: 46.5 };
const BAR_WIDTH = 17;
const TOP = 7;
const LEGEND_HEIGHT = 11;
const LABEL_STEP = 2.9;
const LABEL_SIZE = 2.3;
const LABEL_SIGNS = 17;

/** Fuel light, water dark: told apart by their side, their grey and the heads above. */
const INKS: Record<Commodity, { tank: string; can: string }> = {
  fuel: { tank: '#b8b8b8', can: '#e2e2e2' },
  water: { tank: '#6f6f6f', can: '#cfcfcf' },
};

/** One side of the road: `inner` at its edge, growing by `outward`. */
interface Side {
  readonly commodity: Commodity;
  readonly inner: number;
  readonly outward: 1 | -1;
  readonly mmPerLitre: number;
  readonly yOfKm: (km: number) => number;
}

/** What is aboard along the route, km upwards: fuel left of the road, water right; numbers as in the table of stops. */
export function stripPicture(planned: PlannedTrip, heightMm: number): Picture {
  const bottom = heightMm - LEGEND_HEIGHT;
  const lengthKm = Math.max(planned.analysis.route.lengthKm, 0.001);
  const yOfKm = (km: number) => bottom - (km / lengthKm) * (bottom - TOP);
  const sides = (['fuel', 'water'] as const).map(
    (commodity): Side => ({
      commodity,
      inner: commodity === 'fuel' ? ROAD.leftX : ROAD.rightX,
      outward: commodity === 'fuel' ? -1 : 1,
      mmPerLitre: BAR_WIDTH / fullLitres(planned, commodity),
      yOfKm,
    }),
  );
  const body = [
    ...sides.flatMap((side) => [headOf(side), ...barOf(planned, side), ...labelsOf(planned, side)]),
    ...roadOf(planned, yOfKm),
    ...legendOf(planned, heightMm),
  ];
  return {
    svg: svgText({ width: WIDTH, height: heightMm }, body),
    widthMm: WIDTH,
    heightMm,
    alt: words().strip,
  };
}

const fullLitres = (planned: PlannedTrip, commodity: Commodity): number =>
  Math.max(
    planned.analysis[commodity].capacityL,
    ...levelRuns(planned, commodity).flatMap(({ levels }) => levels.map(({ totalL }) => totalL)),
    1,
  );

const headOf = ({ commodity, inner, outward }: Side): string =>
  text({ x: inner + (outward * BAR_WIDTH) / 2, y: TOP - 3 }, words()[commodity], {
    sizeMm: 3,
    anchor: 'middle',
    bold: true,
  });

function acrossOf({ inner, outward, yOfKm }: Side, fromKm: number, toKm: number): BoxMm {
  const y = yOfKm(toKm);
  return {
    x: outward < 0 ? inner - BAR_WIDTH : inner,
    y,
    width: BAR_WIDTH,
    height: Math.max(0.2, yOfKm(fromKm) - y),
  };
}

function barOf(planned: PlannedTrip, side: Side): string[] {
  const { commodity } = side;
  const inks = INKS[commodity];
  const open = withoutCover(planned, commodity).map(({ fromKm, toKm }) =>
    dots(acrossOf(side, fromKm, toKm), 1.4),
  );
  const runs = levelRuns(planned, commodity).flatMap(({ levels, reserve, dry }) => [
    areaOf(side, levels, ({ totalL }) => totalL, inks.can),
    areaOf(side, levels, ({ tankL }) => tankL, inks.tank),
    ...(reserve === null ? [] : [reserveOf(acrossOf(side, reserve.fromKm, reserve.toKm))]),
    ...(dry === null ? [] : [dryOf(acrossOf(side, dry.fromKm, dry.toKm))]),
  ]);
  return [...open, ...runs];
}

/** Between the road and what is aboard, its edge drawn. */
function areaOf(
  { inner, outward, mmPerLitre, yOfKm }: Side,
  levels: readonly LevelAt[],
  litres: (level: LevelAt) => number,
  ink: string,
): string {
  const [first, last] = [levels[0], levels.at(-1)];
  if (first === undefined || last === undefined) return '';
  const edge = levels.map((level) => ({
    x: inner + outward * litres(level) * mmPerLitre,
    y: yOfKm(level.atKm),
  }));
  const corners = [{ x: inner, y: yOfKm(first.atKm) }, ...edge, { x: inner, y: yOfKm(last.atKm) }];
  return area(corners, ink) + line(edge, { widthMm: 0.15 });
}

const reserveOf = (box: BoxMm): string => hatch(box, 1.6, { widthMm: 0.2 });
const dryOf = (box: BoxMm): string =>
  rect(box, { ink: '#fff', pen: { widthMm: 0.3 } }) + hatch(box, 1.1, { widthMm: 0.45 });

function roadOf({ analysis: { route } }: PlannedTrip, yOfKm: (km: number) => number): string[] {
  const top = yOfKm(route.lengthKm);
  const bottom = yOfKm(0);
  const step = kmFrom(roundStep(distanceIn(route.lengthKm / 7)));
  const ticks: string[] = [];
  for (let km = step; km < route.lengthKm - step / 3; km += step)
    ticks.push(
      text({ x: (ROAD.leftX + ROAD.rightX) / 2, y: yOfKm(km) + 0.7 }, kmText(km), {
        sizeMm: 1.9,
        anchor: 'middle',
        ink: '#fff',
      }),
    );
  const box = { x: ROAD.leftX, y: top, width: ROAD.rightX - ROAD.leftX, height: bottom - top };
  return [rect(box, { ink: '#000' }), ...ticks];
}

/** 1, 2 or 5 and zeros, no less than what is wanted. */
export function roundStep(wanted: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(wanted, 1e-3)));
  return ([1, 2, 5].find((digit) => digit * power >= wanted) ?? 10) * power;
}

interface Label {
  readonly atKm: number;
  readonly words: string;
  readonly bold: boolean;
  /** The greatest stays where there is no room for all. */
  readonly weight: number;
}

/** Names beyond the bar, each at its place or pushed a little off it; those that find no room are left to the table. */
function labelsOf(planned: PlannedTrip, side: Side): string[] {
  const { inner, outward, yOfKm } = side;
  const all = labelsFor(planned, side.commodity);
  const room = Math.floor((yOfKm(0) - yOfKm(planned.analysis.route.lengthKm)) / LABEL_STEP) + 1;
  const chosen = new Set(all.toSorted((a, b) => b.weight - a.weight).slice(0, room));
  const barX = inner + outward * BAR_WIDTH;
  const textX = barX + outward * 2.6;
  return spread(
    all.filter((label) => chosen.has(label)),
    yOfKm,
  ).flatMap(({ words, bold, y, atKm }) => [
    line(
      [
        { x: inner, y: yOfKm(atKm) },
        { x: barX, y: yOfKm(atKm) },
        { x: textX - outward * 0.5, y },
      ],
      { widthMm: 0.15 },
    ),
    text({ x: textX, y: y + LABEL_SIZE / 3 }, shortened(words, LABEL_SIGNS), {
      sizeMm: LABEL_SIZE,
      anchor: outward < 0 ? 'end' : 'start',
      bold,
    }),
  ]);
}

/** From the start upwards, never closer than a line; pushed down again from the top where they run over it. */
function spread(labels: readonly Label[], yOfKm: (km: number) => number): (Label & { y: number })[] {
  const inOrder = labels.toSorted((a, b) => a.atKm - b.atKm);
  let limit = Number.POSITIVE_INFINITY;
  const upwards = inOrder.map((label) => {
    limit = Math.min(yOfKm(label.atKm), limit - LABEL_STEP);
    return { ...label, y: limit };
  });
  let floor = TOP;
  return upwards
    .toReversed()
    .map((label) => {
      const y = Math.max(label.y, floor);
      floor = y + LABEL_STEP;
      return { ...label, y };
    })
    .toReversed();
}

function labelsFor(planned: PlannedTrip, commodity: Commodity): Label[] {
  const { plan, whatIf } = planned;
  const stops = numbered(plan.sheet).flatMap(({ number, halt }): Label[] => {
    const supply = halt[commodity];
    if (supply === null) return [];
    const name = nameText(supply.at.name ?? supply.kind ?? printed().lines.unnamedPlaces[supply.at.kind]);
    // Of many those stay from which the way is longest.
    const weight = 2 + (supply.next?.lengthKm ?? 0) / (1 + planned.analysis.route.lengthKm);
    return [{ atKm: supply.at.atKm, words: `${number} ${name}`, bold: true, weight }];
  });
  const backs = whatIf.turnBacks
    .filter((each) => each.commodity === commodity && each.atKm < each.towards.atKm)
    .map(({ atKm, first }) => ({
      atKm,
      words: words().back(kmBefore(atKm)),
      bold: false,
      weight: first ? 1 : 0,
    }));
  const troubles = troubledStretches(planned)
    .filter((each) => each.commodity === commodity)
    .flatMap(({ runsDryKm, reserveFromKm }): Label[] => {
      if (runsDryKm !== null)
        return [{ atKm: runsDryKm, words: words().dry(kmBefore(runsDryKm)), bold: true, weight: 4 }];
      if (reserveFromKm === null) return [];
      return [
        { atKm: reserveFromKm, words: words().reserve(kmBefore(reserveFromKm)), bold: false, weight: 3 },
      ];
    });
  return [...stops, ...(plan.status === 'found' ? backs : []), ...troubles];
}

/** Samples of what the bars are filled with; of a plan nothing is dry. */
function legendOf(planned: PlannedTrip, heightMm: number): string[] {
  const found = planned.plan.status === 'found';
  const y = heightMm - LEGEND_HEIGHT + 4;
  const entries: [string, (box: BoxMm) => string][] = [
    [words().legend.tanks, (box) => rect(box, { ink: '#b8b8b8', pen: { widthMm: 0.15 } })],
    ...(found
      ? [
          [words().legend.cans, (box: BoxMm) => rect(box, { ink: '#e2e2e2', pen: { widthMm: 0.15 } })] as [
            string,
            (box: BoxMm) => string,
          ],
        ]
      : [
          [words().legend.reserve, reserveOf] as [string, (box: BoxMm) => string],
          [words().legend.dry, dryOf] as [string, (box: BoxMm) => string],
        ]),
    [words().legend.unknown, (box) => dots(box, 1.1)],
  ];
  const width = WIDTH / entries.length;
  return entries.flatMap(([words, sample], index) => [
    sample({ x: index * width, y, width: 5, height: 2.6 }),
    text({ x: index * width + 6, y: y + 2 }, words, { sizeMm: LABEL_SIZE }),
  ]);
}
