import type { Analysis } from '../../contract/analysis.ts';
import type { Commodity } from '../../contract/common.ts';
import type { HaltSupply, SheetHalt } from '../../contract/plan.ts';
import { COMMODITIES } from '../../core/quantity/commodities.ts';
import { positionAt } from '../../core/route/passings/locate.ts';
import { printed } from '../../words/printed.ts';
import type { PlannedTrip } from '../plan-trip.ts';
import { atLeast, kmBefore, kmText, needed } from '../text/lines/rounding.ts';
import { saidText } from '../text/lines/said-text.ts';
import type { ExportPack } from './pack.ts';

const words = () => printed().export;

export type MarkKind =
  | 'start'
  | 'stop'
  | 'turn-back'
  | 'pour'
  | 'dry'
  | 'reserve'
  | 'night'
  | 'caution'
  | 'end';

/** A place that somebody on the way has to know: where it is, and what to do there. Degrees, WGS 84. */
export interface Mark {
  readonly kind: MarkKind;
  readonly commodities: readonly Commodity[];
  readonly atKm: number;
  readonly lon: number;
  readonly lat: number;
  /** Short enough for a small screen. */
  readonly name: string;
  readonly words: string;
  /** Of a halt of a plan, what is done about each commodity. */
  readonly supplies: readonly CommoditySupply[];
  /** Of a stop of one commodity, litres. */
  readonly supply: HaltSupply | null;
}

/** Every place to know, in the order of the road. */
export function marksOf(pack: ExportPack): Mark[] {
  const found = pack.planned.plan.status === 'found';
  return [
    ...(found ? haltMarks(pack) : [...endMarks(pack), ...supplyMarks(pack), ...gapMarks(pack)]),
    ...turnBackMarks(pack),
    ...(found ? pourMarks(pack) : []),
    ...nightMarks(pack),
    ...cautionMarks(pack),
  ].sort((a, b) => a.atKm - b.atKm || ORDER[a.kind] - ORDER[b.kind]);
}

const ORDER: Record<MarkKind, number> = {
  start: 0,
  caution: 1,
  'turn-back': 2,
  pour: 3,
  stop: 4,
  reserve: 5,
  dry: 6,
  night: 7,
  end: 8,
};

/** A place on the line itself. */
function onRoute({ route }: ExportPack, atKm: number): Pick<Mark, 'lon' | 'lat' | 'atKm'> {
  const { lon, lat } = positionAt(route, atKm * 1000);
  return { lon, lat, atKm };
}

/** Of a mark that is no halt. */
const BARE = { supplies: [], supply: null } as const;

/** The halts of the plan. Both commodities of one supply are one mark; two supplies of one halt are two. */
function haltMarks(pack: ExportPack): Mark[] {
  return pack.planned.plan.sheet.flatMap((halt) => {
    const supplies = COMMODITIES.flatMap((commodity) => {
      const supply = halt[commodity];
      return supply === null ? [] : [{ commodity, supply }];
    });
    const [first, second] = supplies;
    if (first === undefined) return [];
    const isOne = second === undefined || halt.kind !== 'stop' || first.supply.at.id === second.supply.at.id;
    return isOne ? [haltMark(pack, halt, supplies)] : supplies.map((one) => haltMark(pack, halt, [one]));
  });
}

export interface CommoditySupply {
  readonly commodity: Commodity;
  readonly supply: HaltSupply;
}

function haltMark(pack: ExportPack, halt: SheetHalt, supplies: readonly CommoditySupply[]): Mark {
  const [{ supply } = { supply: null }] = supplies;
  const line = onRoute(pack, supply?.at.atKm ?? halt.atKm);
  const name = supply?.at.name ?? supply?.kind ?? null;
  const commodities = supplies.map(({ commodity }) => commodity);
  return {
    kind: halt.kind,
    commodities,
    ...line,
    lon: supply?.lon ?? line.lon,
    lat: supply?.lat ?? line.lat,
    name:
      halt.kind === 'stop'
        ? words().stopName(commodities, name ?? words().at(kmText(line.atKm)))
        : words().endName(halt.kind === 'start', name),
    words: [
      words().at(kmText(line.atKm)),
      ...supplies.flatMap((one) => supplyWords(one, pack.planned)),
      ...contactWords(supply),
    ].join('; '),
    supplies,
    supply: supplies.length === 1 ? supply : null,
  };
}

/** What is done about one commodity: come with, fill, leave with, where next, until where back. */
function supplyWords({ commodity, supply }: CommoditySupply, { plan }: PlannedTrip): string[] {
  const { arriveL, fillL, leaveL, cansFull, next, turnBackKm } = supply;
  const leg = plan.legs[commodity].find(
    ({ from }) => from.id === supply.at.id && from.atKm === supply.at.atKm,
  );
  const told = [
    ...(arriveL === null ? [] : [words().arrive(atLeast(arriveL))]),
    ...(fillL > 0 ? [words().fill(needed(fillL))] : []),
    ...(fillL < 0 ? [words().letGo(needed(-fillL))] : []),
    ...(leaveL === null ? [] : [words().leave(needed(leaveL), cansFull)]),
    ...(next === null
      ? []
      : [words().next(next.at.name ?? words().at(kmText(next.at.atKm)), kmText(next.lengthKm))]),
    ...(leg?.verdict === 'unknown' ? [words().notKnown] : []),
    ...(turnBackKm === null ? [] : [words().turnBackBefore(kmBefore(turnBackKm))]),
  ];
  return told.length === 0 ? [] : [`${commodity}: ${told.join(', ')}`];
}

function contactWords(supply: HaltSupply | null): string[] {
  const { phone = null, openingHours = null } = supply?.contact ?? {};
  return [
    ...(phone === null ? [] : [words().phone(phone)]),
    ...(openingHours === null ? [] : [words().hours(openingHours)]),
  ];
}

/** Start and end of a route without a plan. */
const endMarks = (pack: ExportPack): Mark[] =>
  (['start', 'end'] as const).map((kind) => ({
    kind,
    commodities: [],
    ...onRoute(pack, kind === 'start' ? 0 : pack.planned.analysis.route.lengthKm),
    name: words().endName(kind === 'start', null),
    words: words().noPlan[pack.planned.plan.status === 'none' ? 'none' : 'out-of-time'],
    ...BARE,
  }));

/** Without a plan every supply that counts is a stop. */
const supplyMarks = ({ planned }: ExportPack): Mark[] =>
  planned.analysis.passings
    .filter(({ counts }) => counts)
    .map(({ commodity, name, kind, atKm, lon, lat }) => ({
      kind: 'stop',
      commodities: [commodity],
      atKm,
      lon,
      lat,
      name: words().stopName([commodity], name ?? kind),
      words: [words().at(kmText(atKm)), kind].join('; '),
      ...BARE,
    }));

/** Without a plan: where one is at the reserve, and where nothing is left. */
const gapMarks = (pack: ExportPack): Mark[] =>
  COMMODITIES.flatMap((commodity) =>
    pack.planned.analysis[commodity].gaps.flatMap(({ reserveFromKm, runsDryKm }): Mark[] => [
      ...(reserveFromKm === null
        ? []
        : [
            {
              kind: 'reserve' as const,
              commodities: [commodity],
              ...onRoute(pack, reserveFromKm),
              name: words().reserveName(commodity, kmText(reserveFromKm)),
              words: words().reserve(commodity),
              ...BARE,
            },
          ]),
      ...(runsDryKm === null
        ? []
        : [
            {
              kind: 'dry' as const,
              commodities: [commodity],
              ...onRoute(pack, runsDryKm),
              name: words().dryName(commodity, kmText(runsDryKm)),
              words: words().dry(commodity),
              ...BARE,
            },
          ]),
    ]),
  );

/** As the gauge table has them. */
const turnBackMarks = (pack: ExportPack): Mark[] =>
  pack.planned.gauge.rows
    .filter(({ at }) => at === 'turn-back')
    .flatMap(({ atKm, commodities, name }) =>
      commodities.map((commodity) => ({
        kind: 'turn-back' as const,
        commodities: [commodity],
        ...onRoute(pack, atKm),
        name: words().turnBackName(commodity, kmBefore(atKm)),
        words: words().turnBack(commodity, words().endName(true, name)),
        ...BARE,
      })),
    );

const pourMarks = (pack: ExportPack): Mark[] =>
  pack.planned.plan.carries.flatMap(({ commodity, pourAtKm }) =>
    pourAtKm.map((atKm) => ({
      kind: 'pour' as const,
      commodities: [commodity],
      ...onRoute(pack, atKm),
      name: words().pourName(commodity, kmText(atKm)),
      words: words().pour(commodity),
      ...BARE,
    })),
  );

const nightMarks = (pack: ExportPack): Mark[] =>
  pack.planned.analysis.nights.map(({ atKm, name }, index) => ({
    kind: 'night',
    commodities: [],
    ...onRoute(pack, atKm),
    name: words().nightName(index + 1, name),
    words: words().at(kmText(atKm)),
    ...BARE,
  }));

/** Those that speak of a place. */
const cautionMarks = (pack: ExportPack): Mark[] =>
  placedCautions(pack.planned).map(({ fromKm, text }) => ({
    kind: 'caution',
    commodities: [],
    ...onRoute(pack, fromKm),
    name: words().cautionName(kmText(fromKm)),
    words: text,
    ...BARE,
  }));

function placedCautions({ analysis, plan }: PlannedTrip): { fromKm: number; text: string }[] {
  const all: Analysis['cautions'] = [...analysis.cautions, ...plan.restsOn];
  const texts = new Map<string, { fromKm: number; text: string }>();
  for (const caution of all) {
    const { fromKm } = caution;
    const text = saidText(caution);
    if (fromKm !== undefined) texts.set(`${fromKm} ${text}`, { fromKm, text });
  }
  return [...texts.values()];
}
