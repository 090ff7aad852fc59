import type { HaltSupply, SheetHalt } from '../../../contract/plan.ts';
import { printed } from '../../../words/printed.ts';
import type { PlannedTrip } from '../../plan-trip.ts';
import { km } from '../../text/lines/figures.ts';
import {
  atLeast,
  atLeastText,
  atPlace,
  kmBefore,
  kmText,
  lengthText,
  needed,
} from '../../text/lines/rounding.ts';
import { places, whenText } from '../../text/plan/sheet-text.ts';
import { type Block, cell, row, type SheetColumn, type SheetRow } from '../model/model.ts';
import { contactFacts, edgeName, knownFacts, nameText, numbered, pointText, suppliesOf } from './places.ts';

const words = () => printed().paper.tables.stops;
const heads = () => words().columns;

const columns = (): readonly SheetColumn[] => [
  { ...heads().number, lean: 'right', width: 5 },
  { ...heads().at, lean: 'right', width: 8 },
  { ...heads().place, lean: 'left', width: 34 },
  { ...heads().of, lean: 'left', width: 13 },
  { ...heads().arrive, lean: 'right', width: 9 },
  { ...heads().fill, lean: 'left', width: 22 },
  { ...heads().leave, lean: 'left', width: 15 },
  { ...heads().next, lean: 'left', width: 22 },
  { ...heads().back, lean: 'right', width: 10 },
];

/** The stops of the plan, each of them. Nothing without a plan. */
export function stopBlocks(planned: PlannedTrip): Block[] {
  const { plan } = planned;
  if (plan.status !== 'found') return [];
  const passed = plan.stops.flatMap(({ passings }) => passings).filter(({ used }) => !used).length;
  return [
    {
      kind: 'table',
      columns: columns(),
      rows: numbered(plan.sheet).flatMap((one) => rowsOf(one, planned)),
    },
    {
      kind: 'lines',
      lines: [
        ...(passed > 0 ? [words().passed(passed)] : []),
        ...(isLong(planned) ? [words().shortened] : []),
        words().rounding,
        words().times,
      ],
    },
  ];
}

/** Halts beyond which each is told shorter (ours): what is not known is said once for all, times are left to the days. */
const LONG_PLAN = 24;
const isLong = ({ plan }: PlannedTrip): boolean => plan.sheet.length > LONG_PLAN;

/** A line for each commodity; two at one place name it once. */
function rowsOf({ number, halt }: { number: number; halt: SheetHalt }, planned: PlannedTrip): SheetRow[] {
  return suppliesOf(halt).map(({ commodity, supply }, index) => {
    const isSame = index > 0 && halt.fuel?.at.id === halt.water?.at.id;
    const leg = planned.plan.legs[commodity].find(
      ({ from }) => from.id === supply.at.id && from.atKm === supply.at.atKm,
    );
    return row(
      [
        cell(index === 0 ? String(number) : ''),
        cell(isSame ? '' : kmText(supply.at.atKm), { strong: true }),
        isSame
          ? cell('')
          : cell(nameText(supply.at.name ?? supply.kind ?? endName(halt)), {
              strong: true,
              second: placeFacts(halt, supply, isLong(planned)).join('; '),
            }),
        cell(printed().lines.commodity(commodity)),
        cell(supply.arriveL === null ? '' : atLeast(supply.arriveL)),
        fillCell(halt, supply),
        leaveCell(supply),
        nextCell(supply, leg?.verdict === 'unknown'),
        cell(supply.leaveL === null ? '' : backText(supply.turnBackKm)),
      ],
      index > 0,
    );
  });
}

const backText = (turnBackKm: number | null): string =>
  turnBackKm === null ? words().none : kmBefore(turnBackKm);

const endName = ({ kind }: SheetHalt): string => (kind === 'start' ? words().start : words().end);

/** Where it is, whom to ask, when it is open, when one comes there: what is not known is said. */
function placeFacts(halt: SheetHalt, supply: HaltSupply, isShort: boolean): string[] {
  const { lon, lat, at, contact, arrival, mostL } = supply;
  const open = arrival?.open ?? null;
  const then = open === null ? [] : [open ? words().open : words().shut];
  return [
    ...(lon === null || lat === null ? [] : [pointText(lon, lat)]),
    ...(halt.kind === 'stop' ? [...(isShort ? knownFacts(contact) : contactFacts(contact)), ...then] : []),
    ...(at.detourKm > 0.05 ? [words().off(km(at.detourKm))] : []),
    ...(mostL === null ? [] : [words().most(atLeastText(mostL))]),
    ...(isShort ? [] : whenText(halt)),
  ];
}

function fillCell({ kind }: SheetHalt, { fillL, into }: HaltSupply) {
  if (fillL === 0 && into.length === 0) return cell(kind === 'stop' ? words().nothing : '');
  const second = into.map(({ into: where, name, count, litres }) => {
    const what =
      where === 'cans' ? words().cans(count) : where === 'tanks' ? words().tanks : nameText(name ?? '');
    return litres < 0 ? words().letGo(needed(-litres), what) : words().into(needed(litres), what);
  });
  return cell(fillL > 0 ? needed(fillL) : '', { strong: true, second: second.join(', ') });
}

function leaveCell({ leaveL, cansFull, pourAtKm }: HaltSupply) {
  if (leaveL === null) return cell('');
  const pours = pourAtKm.length === 0 ? [] : [words().pour(atPlace(places(pourAtKm, kmText)))];
  const cans = cansFull === 0 ? [] : [words().withCans(cansFull)];
  return cell(needed(leaveL), { strong: true, second: [...cans, ...pours].join('; ') });
}

function nextCell({ next }: HaltSupply, isUnknown: boolean) {
  if (next === null) return cell('');
  const text = words().next(edgeName(next.at), lengthText(next.lengthKm));
  return isUnknown ? cell(text, { second: words().notKnown, verdict: 'unknown' }) : cell(text);
}
