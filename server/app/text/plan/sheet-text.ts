import type { Commodity } from '../../../contract/common.ts';
import type { HaltSupply, PlanTotals, SheetHalt } from '../../../contract/plan.ts';
import { COMMODITIES } from '../../../core/quantity/commodities.ts';
import { figure, litres } from '../lines/figures.ts';
import { plain } from '../lines/plain.ts';
import { type Column, left, right, tableText } from '../lines/table-text.ts';

const COLUMNS: readonly Column[] = [
  right('at', 'km'),
  left('halt'),
  left('of'),
  right('arrive', 'l'),
  right('fill', 'l'),
  right('cans', 'full'),
  right('leave', 'l'),
  left('pour in at km'),
  left('next'),
  right('in', 'km'),
  right('last way back', 'km'),
];

/** The whole plan halt by halt, one line for each commodity; then what to know at each, and what it comes to in all. */
export function sheetLines(halts: readonly SheetHalt[], totals: PlanTotals | null): string[] {
  const rows = halts.flatMap((halt) => inOrder(halt).map((one, index) => cells(halt, one, index)));
  return [
    ...tableText(COLUMNS, rows),
    ...(totals === null ? [] : ['', ...totalLines(totals)]),
    '',
    'At each halt',
    ...halts.flatMap((halt) =>
      inOrder(halt).flatMap((one) => knownLines(halt, one, totals?.currency ?? null)),
    ),
    'Days and times leave out detours, filling and waiting on the way before.',
    ...(halts.some(({ water }) => water?.alarm != null)
      ? [
          'Help that is called for by the hour told comes while there is water: `helpHours` of the trip says how long it takes.',
        ]
      : []),
  ];
}

/** One commodity at a halt. */
interface OfOne {
  readonly commodity: Commodity;
  readonly supply: HaltSupply;
}

/** Both commodities of a halt in the order of the road. */
const inOrder = (halt: SheetHalt): OfOne[] =>
  COMMODITIES.flatMap((commodity): OfOne[] => {
    const supply = halt[commodity];
    return supply === null ? [] : [{ commodity, supply }];
  }).sort((a, b) => a.supply.at.atKm - b.supply.at.atKm);

/** One line; the second of a halt at one object does not name it again. */
function cells(halt: SheetHalt, { commodity, supply }: OfOne, index: number): string[] {
  const { at, arriveL, fillL, cansFull, leaveL, pourAtKm, next, turnBackKm } = supply;
  const isSame = index > 0 && halt.fuel?.at.id === halt.water?.at.id;
  return [
    figure(at.atKm),
    isSame ? '' : nameOf(halt, supply),
    commodity,
    arriveL === null ? '' : figure(arriveL),
    halt.kind !== 'stop' && fillL === 0 ? '' : figure(fillL),
    leaveL === null ? '' : String(cansFull),
    leaveL === null ? '' : figure(leaveL),
    places(pourAtKm),
    next === null ? '' : plain(next.at.name ?? (next.at.kind === 'end' ? 'the end' : 'a supply')),
    next === null ? '' : figure(next.lengthKm),
    leaveL === null ? '' : turnBackKm === null ? 'none' : figure(turnBackKm),
  ];
}

const nameOf = ({ kind }: SheetHalt, { at, kind: what }: HaltSupply): string =>
  plain(at.name ?? what ?? (kind === 'end' ? 'the end' : 'the start'));

/** Places of pours, one that comes again with how often: "971.0, 1046.0 (2)". */
export function places(kms: readonly number[]): string {
  const counts = new Map<string, number>();
  for (const at of kms.map(figure)) counts.set(at, (counts.get(at) ?? 0) + 1);
  return [...counts].map(([at, count]) => (count === 1 ? at : `${at} (${count})`)).join(', ');
}

/** What goes into which container, when one comes there, its hours, its telephone. */
function knownLines(halt: SheetHalt, { commodity, supply }: OfOne, currency: string | null): string[] {
  if (halt.kind === 'end' || (halt.kind === 'start' && supply.into.length === 0 && supply.alarm === null))
    return [];
  const facts = [
    ...fillFacts(supply, commodity),
    ...timeFacts(halt, supply),
    ...supplyFacts(supply, currency),
  ];
  return [`- km ${figure(supply.at.atKm)}, ${nameOf(halt, supply)}, ${commodity}: ${facts.join('; ')}`];
}

function fillFacts({ into }: HaltSupply, commodity: Commodity): string[] {
  const parts = into.map(({ into: where, name, count, litres: amount }) => {
    const what =
      where === 'cans'
        ? `${count} ${count === 1 ? 'can' : 'cans'}`
        : where === 'tanks'
          ? 'the tanks'
          : `the tank "${plain(name ?? '')}"`;
    return amount < 0 ? `${litres(-amount)} let go from ${what}` : `${litres(amount)} into ${what}`;
  });
  return parts.length === 0 ? [`no ${commodity} to fill`] : [parts.join(', ')];
}

function timeFacts(
  { time: { firstDay, lastDay, span }, kind }: SheetHalt,
  { arrival }: HaltSupply,
): string[] {
  if (kind === 'start') return span === null ? [] : [clock(span.earliest)];
  const days = firstDay === lastDay ? `day ${firstDay}` : `day ${firstDay} to ${lastDay}`;
  const when = span === null ? days : `${days}, ${spanText(span)}`;
  if (arrival === null || arrival.open === null) return [when];
  return [`${when}, ${arrival.open ? 'open then' : 'shut at some of that time'}`];
}

const spanText = ({ earliest, latest }: { earliest: string; latest: string }): string =>
  earliest === latest ? clock(earliest) : `${clock(earliest)} to ${clock(latest)}`;

const clock = (time: string): string => time.replace('T', ' ');

function supplyFacts(supply: HaltSupply, currency: string | null): string[] {
  const { mostL, waitHours, fillHours, contact, cost, alarm, at } = supply;
  return [
    ...(at.detourKm > 0.05 ? [`${figure(at.detourKm)} km off the route, one way`] : []),
    ...(mostL === null ? [] : [`no more than ${litres(mostL)} to be had`]),
    ...(waitHours === 0 ? [] : [`${figure(waitHours)} h of waiting`]),
    ...(fillHours === 0 ? [] : [`${figure(fillHours)} h of filling`]),
    ...(cost === null || cost === 0 ? [] : [`costs ${money(cost, currency)}`]),
    ...(contact === null ? [] : contactFacts(contact)),
    ...(alarm === null ? [] : [alarmText(alarm)]),
  ];
}

const contactFacts = ({ phone, openingHours }: NonNullable<HaltSupply['contact']>): string[] => [
  phone === null ? 'no telephone known' : `telephone ${plain(phone)}`,
  ...(openingHours === null ? [] : [`hours ${plain(openingHours)}`]),
];

const money = (amount: number, currency: string | null): string =>
  `${amount.toFixed(2)}${currency === null ? '' : ` ${plain(currency)}`}`;

function alarmText({ afterHours, by }: NonNullable<HaltSupply['alarm']>): string {
  if (afterHours < 0) return 'stranded behind here, the water does not last until help is there';
  return `stranded behind here, call for help by ${by === null ? '' : `${clock(by)}, `}${Math.floor(afterHours)} h after leaving`;
}

/** Detours of less than this are not told, hours. */
const SHORT_H = 0.05;

/** Litres, money, hours and days of a whole plan. */
function totalLines({ filled, currency, drivingKm, ...hours }: PlanTotals): string[] {
  const filledText = COMMODITIES.map((commodity) => {
    const { startL, stopsL, cost } = filled[commodity];
    const start = startL === 0 ? '' : ` and ${litres(startL)} before leaving`;
    const price = cost === null || cost === 0 ? '' : `, for ${money(cost, currency)}`;
    return `${litres(stopsL)} of ${commodity} at stops${start}${price}`;
  });
  const { drivingHours, detourHours, waitHours, fillHours, days } = hours;
  const parts = [
    `${figure(drivingHours)} h of driving at the slow pace`,
    ...(detourHours < SHORT_H ? [] : [`${figure(detourHours)} h for ${figure(drivingKm)} km off the route`]),
    ...(waitHours === 0 ? [] : [`${figure(waitHours)} h of waiting`]),
    ...(fillHours === 0 ? [] : [`${figure(fillHours)} h of filling`]),
  ];
  return [
    `To fill in all: ${filledText.join('; ')}.`,
    `In all ${parts.join(', ')}: about ${figure(days)} days.`,
  ];
}
