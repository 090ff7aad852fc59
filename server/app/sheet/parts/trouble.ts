import type { Passing } from '../../../contract/analysis.ts';
import type { Verdict } from '../../../contract/common.ts';
import type { CallFirst } from '../../../contract/whatif.ts';
import { printed } from '../../../words/printed.ts';
import type { PlannedTrip } from '../../plan-trip.ts';
import { kmBefore, kmText, needed } from '../../text/lines/rounding.ts';
import { type Block, cell, row, type SheetColumn } from '../model/model.ts';
import { contactFacts, edgeText, nameText, pointText } from './places.ts';
import { type Stretch, stretchesOf, worstFirst } from './stretches.ts';

const words = () => printed().paper.tables.trouble;
const heads = () => words().columns;
const stopWords = () => printed().paper.tables.stops;

/** Stretches that are named before the rest is counted (ours): half a page. */
const MOST_ROWS = 18;

const columns = (): readonly SheetColumn[] => [
  { ...heads().stretch, lean: 'left', width: 36 },
  { ...heads().of, lean: 'left', width: 13 },
  { ...heads().verdict, lean: 'left', width: 16 },
  { ...heads().length, lean: 'right', width: 11 },
  { ...heads().need, lean: 'right', width: 10 },
  { ...heads().reserve, lean: 'right', width: 10 },
  { ...heads().missing, lean: 'right', width: 10 },
  { ...heads().dry, lean: 'right', width: 10 },
];

/** The stretches that one goes by, those that are not enough told apart: in the order of the road, of many the worst. */
function troubleOf(planned: PlannedTrip): { named: Stretch[]; left: Stretch[] } {
  const all = stretchesOf(planned);
  const troubled = all.filter(({ verdict }) => verdict !== 'enough');
  const worst = new Set(worstFirst(troubled).slice(0, MOST_ROWS));
  return { named: all.filter((one) => worst.has(one)), left: all.filter((one) => !worst.has(one)) };
}

/** The stretches that are not enough, of many the worst. */
export const troubledStretches = (planned: PlannedTrip): Stretch[] => troubleOf(planned).named;

/** Every stretch that is not known to hold, the worst of many; the rest counted. Nothing where all hold. */
export function troubleBlocks(planned: PlannedTrip): Block[] {
  const { named, left } = troubleOf(planned);
  if (named.length === 0) return [];
  const counts = new Map<Verdict, number>();
  for (const { verdict } of left) counts.set(verdict, (counts.get(verdict) ?? 0) + 1);
  return [
    { kind: 'table', columns: columns(), rows: named.map(rowOf) },
    {
      kind: 'lines',
      lines: [
        ...[...counts].map(([verdict, count]) =>
          verdict === 'enough' ? words().rest(count) : words().more(count, printed().lines.verdicts[verdict]),
        ),
        planned.plan.status === 'found' ? words().ofPlan : words().withoutPlan,
      ],
    },
    ...supplyBlocks(planned, named),
  ];
}

const rowOf = ({ commodity, from, to, verdict, ...figures }: Stretch) =>
  row([
    cell(words().stretch(edgeText(from), edgeText(to)), { strong: true }),
    cell(printed().lines.commodity(commodity)),
    cell(printed().lines.verdicts[verdict], { verdict, strong: true }),
    cell(kmText(to.atKm - from.atKm)),
    cell(needed(figures.needL)),
    cell(needed(figures.reserveL)),
    cell(figures.marginL < 0 ? needed(-figures.marginL) : ''),
    cell(figures.runsDryKm === null ? '' : kmBefore(figures.runsDryKm)),
  ]);

const supplyColumns = (): readonly SheetColumn[] => [
  { ...stopWords().columns.at, lean: 'right', width: 8 },
  { ...stopWords().columns.place, lean: 'left', width: 92 },
];

/** Without a plan the supplies at the ends of what does not hold; with one they are among its stops. */
function supplyBlocks({ plan, whatIf, analysis }: PlannedTrip, named: readonly Stretch[]): Block[] {
  if (plan.status === 'found') return [];
  const ends = new Set(named.flatMap(({ from, to }) => [from, to]).map(({ id, atKm }) => `${id} ${atKm}`));
  const calls = new Map(whatIf.callFirst.map((call) => [call.id, call]));
  const seen = new Set<string>();
  const supplies = analysis.passings.filter(({ id, atKm }) => {
    const place = `${id} ${atKm}`;
    if (!ends.has(place) || seen.has(place)) return false;
    seen.add(place);
    return true;
  });
  if (supplies.length === 0) return [];
  const rows = supplies.map(({ id, ...passing }) => supplyRow(passing, calls.get(id)));
  return [
    { kind: 'lines', lines: [stopWords().supplies] },
    { kind: 'table', columns: supplyColumns(), rows },
  ];
}

const supplyRow = (
  { atKm, name, kind, lon, lat }: Pick<Passing, 'atKm' | 'name' | 'kind' | 'lon' | 'lat'>,
  call: CallFirst | undefined,
) =>
  row([
    cell(kmText(atKm), { strong: true }),
    cell(nameText(name ?? kind), {
      strong: true,
      second: [
        kind,
        pointText(lon, lat),
        ...contactFacts(call === undefined ? { phone: null, openingHours: null } : call.isOwn ? null : call),
      ].join('; '),
    }),
  ]);
