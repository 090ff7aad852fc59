import type { Commodity } from '../../../contract/common.ts';
import type { HaltSupply, PlanTotals, SheetHalt } from '../../../contract/plan.ts';
import { COMMODITIES } from '../../../core/quantity/commodities.ts';
import { printed } from '../../../words/printed.ts';
import { figure, litres } from '../lines/figures.ts';
import { plain } from '../lines/plain.ts';
import { type Column, left, right, tableText } from '../lines/table-text.ts';

const words = () => printed().sheet;
const lineWords = () => printed().lines;
const heads = () => words().columns;

const COLUMNS: readonly Column[] = [
  right(heads().at),
  left(heads().halt),
  left(heads().of),
  right(heads().arrive),
  right(heads().fill),
  right(heads().cans),
  right(heads().leave),
  left(heads().pours),
  left(heads().next),
  right(heads().nextKm),
  right(heads().turnBack),
];

/** The whole plan halt by halt, one line for each commodity; then what to know at each, and what it comes to in all. */
export function sheetLines(halts: readonly SheetHalt[], totals: PlanTotals | null): string[] {
  const rows = halts.flatMap((halt) => inOrder(halt).map((one, index) => cells(halt, one, index)));
  return [
    ...tableText(COLUMNS, rows),
    ...(totals === null ? [] : ['', ...totalLines(totals)]),
    '',
    words().atEachHalt,
    ...halts.flatMap((halt) =>
      inOrder(halt).flatMap((one) => knownLines(halt, one, totals?.currency ?? null)),
    ),
    words().timesLeaveOut,
    ...(halts.some(({ water }) => water?.alarm != null) ? [words().help] : []),
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
    isSame ? '' : nameOf(supply),
    lineWords().commodity(commodity),
    arriveL === null ? '' : figure(arriveL),
    halt.kind !== 'stop' && fillL === 0 ? '' : figure(fillL),
    leaveL === null ? '' : String(cansFull),
    leaveL === null ? '' : figure(leaveL),
    places(pourAtKm),
    next === null ? '' : plain(next.at.name ?? words().unnamed[next.at.kind]),
    next === null ? '' : figure(next.lengthKm),
    leaveL === null ? '' : turnBackKm === null ? words().noTurnBack : figure(turnBackKm),
  ];
}

const nameOf = ({ at, kind: what }: HaltSupply): string => plain(at.name ?? what ?? words().unnamed[at.kind]);

/** Places of pours, one that comes again with how often: "971.0, 1046.0 (2)". */
export function places(kms: readonly number[], text: (km: number) => string = figure): string {
  const counts = new Map<string, number>();
  for (const at of kms.map(text)) counts.set(at, (counts.get(at) ?? 0) + 1);
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
  const name = nameOf(supply);
  const told = { name, commodity: lineWords().commodity(commodity), facts: facts.join('; ') };
  return [`- ${words().halt(figure(supply.at.atKm), told)}`];
}

function fillFacts({ into }: HaltSupply, commodity: Commodity): string[] {
  const parts = into.map(({ into: where, name, count, litres: amount }) => {
    const what =
      where === 'cans'
        ? lineWords().cans(count)
        : where === 'tanks'
          ? words().tanks
          : words().tank(plain(name ?? ''));
    return amount < 0 ? words().letGo(litres(-amount), what) : words().fill(litres(amount), what);
  });
  return parts.length === 0 ? [words().nothingToFill(lineWords().commodity(commodity))] : [parts.join(', ')];
}

/** On which days and at what times one comes there; nothing of a start without a date. */
export function whenText({ time: { firstDay, lastDay, span }, kind }: SheetHalt): string[] {
  if (kind === 'start') return span === null ? [] : [clock(span.earliest)];
  const days = words().day(firstDay, lastDay);
  return [span === null ? days : words().dayAndTime(days, spanText(span))];
}

function timeFacts(halt: SheetHalt, { arrival }: HaltSupply): string[] {
  const when = whenText(halt);
  if (halt.kind === 'start' || arrival === null || arrival.open === null) return when;
  return when.map((text) => `${text}, ${arrival.open ? words().openThen : words().shutThen}`);
}

const spanText = ({ earliest, latest }: { earliest: string; latest: string }): string =>
  earliest === latest ? clock(earliest) : words().between(clock(earliest), clock(latest));

/** A local time as it is read. */
export const clock = (time: string): string => time.replace('T', ' ');

function supplyFacts(supply: HaltSupply, currency: string | null): string[] {
  const { mostL, waitHours, fillHours, contact, cost, alarm, at } = supply;
  return [
    ...(at.detourKm > 0.05 ? [words().offRoute(figure(at.detourKm))] : []),
    ...(mostL === null ? [] : [words().atMost(litres(mostL))]),
    ...(waitHours === 0 ? [] : [words().waiting(figure(waitHours))]),
    ...(fillHours === 0 ? [] : [words().filling(figure(fillHours))]),
    ...(cost === null || cost === 0 ? [] : [words().costs(money(cost, currency))]),
    ...(contact === null ? [] : contactFacts(contact)),
    ...(alarm === null ? [] : [alarmText(alarm)]),
  ];
}

const contactFacts = ({ phone, openingHours }: NonNullable<HaltSupply['contact']>): string[] => [
  phone === null ? lineWords().noTelephone : lineWords().telephone(plain(phone)),
  ...(openingHours === null ? [] : [lineWords().openHours(plain(openingHours))]),
];

const money = (amount: number, currency: string | null): string =>
  words().money(amount.toFixed(2), currency === null ? null : plain(currency));

function alarmText({ afterHours, by }: NonNullable<HaltSupply['alarm']>): string {
  if (afterHours < 0) return words().strandedForLong;
  return words().callForHelp(Math.floor(afterHours), by === null ? null : clock(by));
}

/** Detours of less than this are not told, hours. */
const SHORT_H = 0.05;

/** Litres, money, hours and days of a whole plan. */
function totalLines({ filled, currency, drivingKm, ...hours }: PlanTotals): string[] {
  const filledText = COMMODITIES.map((commodity) => {
    const { startL, stopsL, cost } = filled[commodity];
    const start = startL === 0 ? '' : words().filledBefore(litres(startL));
    const price = cost === null || cost === 0 ? '' : words().forMoney(money(cost, currency));
    return `${words().filled(litres(stopsL), lineWords().commodity(commodity))}${start}${price}`;
  });
  const { drivingHours, detourHours, waitHours, fillHours, days } = hours;
  const parts = [
    words().driving(figure(drivingHours)),
    ...(detourHours < SHORT_H ? [] : [words().detours(figure(detourHours), figure(drivingKm))]),
    ...(waitHours === 0 ? [] : [words().waiting(figure(waitHours))]),
    ...(fillHours === 0 ? [] : [words().filling(figure(fillHours))]),
  ];
  return [words().fillInAll(filledText.join('; ')), words().timeInAll(parts.join(', '), figure(days))];
}
