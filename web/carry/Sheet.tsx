import { Fragment } from 'react';
import type { Commodity } from '../../server/contract/common.ts';
import type { HaltSupply, PlanTotals, SheetHalt } from '../../server/contract/plan.ts';
import type { FuelKind } from '../../server/contract/rig.ts';
import {
  figureLitres,
  formatAtKm,
  formatBeforeKm,
  formatFigure,
  formatKm,
  formatLitres,
  NO_BREAK,
  type UnitSystem,
  volumeUnit,
} from '../units/units.ts';
import { formatTimeSpan, formatWhen } from '../words/local-time.ts';
import { atPlaces, contentWord, countCans } from '../words/plan-words.ts';
import { capitalised, edgeName } from '../words/words.ts';
import '../table/plain-table.css';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';

interface SheetProps {
  caption: string;
  halts: readonly SheetHalt[];
  totals: PlanTotals | null;
  kind: FuelKind;
  units: UnitSystem;
}

interface OfOne {
  readonly commodity: Commodity;
  readonly supply: HaltSupply;
}

/** Both commodities of a halt in the order of the road. */
const inOrder = (halt: SheetHalt): OfOne[] =>
  (['fuel', 'water'] as const)
    .flatMap((commodity): OfOne[] => {
      const supply = halt[commodity];
      return supply === null ? [] : [{ commodity, supply }];
    })
    .sort((a, b) => a.supply.at.atKm - b.supply.at.atKm);

/** The whole plan halt by halt, both commodities: what is filled into what, what one leaves with, until where it lasts. */
export function Sheet({ caption, halts, totals, kind, units }: SheetProps) {
  const volume = volumeUnit(units);
  return (
    <section aria-label={caption}>
      <table className="plain-table sheet">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">{tx`Arrive with${NO_BREAK}${volume}`}</th>
            <th scope="col">{tx`Fill${NO_BREAK}${volume}`}</th>
            <th scope="col">{tx`Leave with${NO_BREAK}${volume}`}</th>
            <th scope="col">{t('Next')}</th>
          </tr>
        </thead>
        {halts.map((halt) => (
          <tbody key={`${halt.kind} ${halt.atKm} ${halt.fuel?.at.id ?? ''} ${halt.water?.at.id ?? ''}`}>
            <tr>
              <th scope="rowgroup" colSpan={4}>
                <HaltHead halt={halt} units={units} />
              </th>
            </tr>
            {inOrder(halt).map(({ commodity, supply }) => (
              <tr key={commodity}>
                <SupplyCells {...{ halt, commodity, supply, kind, units }} />
              </tr>
            ))}
          </tbody>
        ))}
      </table>
      {totals !== null && <Totals {...{ totals, kind, units }} />}
    </section>
  );
}

/** Where and when: each object once, with its hours and its telephone. */
function HaltHead({ halt, units }: { halt: SheetHalt; units: UnitSystem }) {
  const [first, ...more] = inOrder(halt);
  if (first === undefined) return null;
  const others = more.filter(({ supply }) => supply.at.id !== first.supply.at.id);
  return (
    <>
      {[first, ...others].map(({ supply }) => (
        <Fragment key={supply.at.id ?? supply.at.kind}>
          {formatAtKm(supply.at.atKm, units)}, {nameOf(supply)}
          {supply.at.kind === 'passing' && <span className="second">{askWords(supply, units)}</span>}
        </Fragment>
      ))}
      {halt.kind !== 'start' && <span className="second">{whenWords(halt)}</span>}
    </>
  );
}

const nameOf = ({ at, kind }: HaltSupply): string =>
  at.name ?? (kind === null ? edgeName(at) : capitalised(kind));

/** "0.5 km off the route; telephone 0123; hours Mo-Fr 08:00-17:00, open then". */
function askWords({ at, contact, arrival }: HaltSupply, units: UnitSystem): string {
  return [
    ...(at.detourKm > 0.05 ? [t`${formatKm(at.detourKm, units)} off the route`] : []),
    ...(contact === null ? [] : contactWords(contact, arrival)),
  ].join('; ');
}

function contactWords(
  { phone, openingHours }: NonNullable<HaltSupply['contact']>,
  arrival: HaltSupply['arrival'],
): string[] {
  const open = arrival?.open ?? null;
  const then = open === null ? '' : open ? t(', open then') : t(', shut at some of that time');
  return [
    phone === null ? t('no telephone known') : t`telephone ${phone}`,
    ...(openingHours === null ? [] : [t`hours ${openingHours}${then}`]),
  ];
}

function whenWords({ time: { firstDay, lastDay, span } }: SheetHalt): string {
  const days = firstDay === lastDay ? t`day ${firstDay}` : t`day ${firstDay} to ${lastDay}`;
  return span === null ? days : `${days}, ${formatTimeSpan(span)}`;
}

interface SupplyCellsProps extends OfOne {
  halt: SheetHalt;
  kind: FuelKind;
  units: UnitSystem;
}

function SupplyCells({ halt, commodity, supply, kind, units }: SupplyCellsProps) {
  const { arriveL, fillL, cansFull, leaveL, pourAtKm, next, turnBackKm } = supply;
  return (
    <>
      <td>
        <span className={`swatch swatch-${commodity}`} aria-hidden="true" />
        {contentWord(commodity, kind)} {arriveL !== null && figureLitres(arriveL, units)}
      </td>
      <td>
        {halt.kind !== 'end' && (halt.kind === 'stop' || fillL > 0) && <b>{figureLitres(fillL, units)}</b>}
        <span className="second">{fillWords(supply, units)}</span>
      </td>
      <td>
        {leaveL !== null && figureLitres(leaveL, units)}
        {cansFull > 0 && (
          <span className="second">{tx`${countCans(cansFull)} full${pourAtKm.length > 0 && t`, pour at ${atPlaces(pourAtKm, units)}`}`}</span>
        )}
      </td>
      <td>
        {next !== null && (
          <>
            {edgeName(next.at)}, {formatKm(next.lengthKm, units)}
            <span className="second">
              {turnBackKm === null ? t('no way back') : t`last way back ${formatBeforeKm(turnBackKm, units)}`}
            </span>
          </>
        )}
        {supply.alarm !== null && <span className="second">{alarmWords(supply.alarm)}</span>}
      </td>
    </>
  );
}

/** "20 main, 100 in 5 cans; no more than 120 l to be had; 2 h of waiting". */
function fillWords({ into, mostL, waitHours, fillHours }: HaltSupply, units: UnitSystem): string {
  const where = into.map(({ into: container, name, count, litres }) => {
    const what =
      container === 'cans'
        ? countCans(count)
        : container === 'tanks'
          ? t('the tanks')
          : (name ?? t('the tank'));
    return litres < 0
      ? t`${formatLitres(-litres, units)} let go from ${what}`
      : t`${figureLitres(litres, units)} into ${what}`;
  });
  return [
    ...(where.length === 0 ? [] : [where.join(', ')]),
    ...(mostL === null ? [] : [t`no more than ${formatLitres(mostL, units)} to be had`]),
    ...(waitHours === 0 ? [] : [t`${hours(waitHours)} of waiting`]),
    ...(fillHours === 0 ? [] : [t`${hours(fillHours)} of filling`]),
  ].join('; ');
}

const hours = (value: number): string => `${formatFigure(value, 1)}${NO_BREAK}h`;

const alarmWords = ({ afterHours, by }: NonNullable<HaltSupply['alarm']>): string =>
  afterHours < 0
    ? t('stranded behind here, the water does not last until help is there')
    : t`stranded: call for help by ${by === null ? '' : `${formatWhen(by)}, `}${hours(Math.floor(afterHours))} after leaving`;

function Totals({ totals, kind, units }: Pick<SheetProps, 'kind' | 'units'> & { totals: PlanTotals }) {
  const { filled, currency, drivingHours, detourHours, waitHours, fillHours, days } = totals;
  const filledWords = (['fuel', 'water'] as const).map((commodity) => {
    const { startL, stopsL, cost } = filled[commodity];
    const start = startL === 0 ? '' : t` and ${formatLitres(startL, units)} before leaving`;
    const price =
      cost === null || cost === 0
        ? ''
        : t`, for ${formatFigure(cost, 2)}${currency === null ? '' : `${NO_BREAK}${currency}`}`;
    return t`${formatLitres(stopsL, units)} of ${contentWord(commodity, kind)} at stops${start}${price}`;
  });
  const halts = [
    ...(detourHours < 0.05 ? [] : [t`${hours(detourHours)} off the route`]),
    ...(waitHours === 0 ? [] : [t`${hours(waitHours)} of waiting`]),
    ...(fillHours === 0 ? [] : [t`${hours(fillHours)} of filling`]),
  ];
  return (
    <p className="soft">{tx`In all ${filledWords.join('; ')}. ${hours(drivingHours)} of driving at the slow pace${halts.length > 0 && `, ${halts.join(', ')}`}: about ${formatFigure(days, 1)} days. Days and times leave out detours, filling and waiting on the way before.`}</p>
  );
}
