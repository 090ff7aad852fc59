import type { Commodity } from '../../../contract/common.ts';
import type { Gauge, GaugeRow } from '../../../contract/whatif.ts';
import { COMMODITIES } from '../../../core/quantity/commodities.ts';
import { aboardText, wholeNeeded } from '../../../words/parts/reader-figures.ts';
import { printed } from '../../../words/printed.ts';
import type { PlannedTrip } from '../../plan-trip.ts';
import { kmBefore, kmText, lengthText } from '../../text/lines/rounding.ts';
import { gaugePlace } from '../../text/plan/gauge-text.ts';
import { type Block, cell, row, type SheetCell, type SheetColumn } from '../model/model.ts';
import { cansAt, dialOf, type GaugeDial, markText } from './gauge-marks.ts';

const words = () => printed().paper.tables.gauge;
const heads = () => words().columns;

/** Lines that fit one page beside their words (ours). */
const MOST_ROWS = 46;

/** The least to have aboard along the road, in litres and in the gauge's marks; thinned out to one page. */
export function gaugeBlocks(planned: PlannedTrip): Block[] {
  const { gauge } = planned;
  const dials = { fuel: dialOf(planned, 'fuel'), water: dialOf(planned, 'water') };
  const { rows, stepKm, isWhole } = thinned(gauge);
  return [
    { kind: 'table', columns: columnsOf(dials), rows: rows.map((one) => rowOf(one, { planned, dials })) },
    {
      kind: 'lines',
      lines: [
        words().bases[gauge.basis],
        ...dialLines(planned, dials),
        ...(stepKm === gauge.stepKm ? [] : [words().every(lengthText(stepKm), lengthText(gauge.stepKm))]),
        ...(isWhole ? [] : [words().leftOut]),
      ],
    },
  ];
}

interface Thinned {
  readonly rows: readonly GaugeRow[];
  readonly stepKm: number;
  /** False where lines are left out at which one fills or can turn back. */
  readonly isWhole: boolean;
}

const PLACES_TO_ACT: readonly GaugeRow['at'][] = ['arriving', 'leaving', 'turn-back'];

/** A step this near to another line says nothing that the line does not. */
const BESIDE_KM = 1;

/** Steps of twice, four times the length until all fits; on a road of many stops without the lines of each stop. */
function thinned({ rows, stepKm }: Gauge): Thinned {
  for (const isWhole of [true, false]) {
    const kept = isWhole ? rows : rows.filter(({ at }) => !PLACES_TO_ACT.includes(at));
    const placesKm = kept.filter(({ at }) => at !== 'step').map(({ atKm }) => atKm);
    for (let every = stepKm; every <= MOST_TIMES * stepKm; every *= 2) {
      const some = kept.filter((row) => row.at !== 'step' || isStepOf(row, every, placesKm));
      if (some.length <= MOST_ROWS) return { rows: some, stepKm: every, isWhole };
    }
  }
  throw new RangeError(`a gauge of ${rows.length} lines`);
}

/** Steps are at most so many times as long as the gauge has them; a road of 800,000 km is none. */
const MOST_TIMES = 16_384;

const isStepOf = ({ atKm }: GaugeRow, everyKm: number, placesKm: readonly number[]): boolean =>
  Math.abs(atKm - Math.round(atKm / everyKm) * everyKm) < 1e-6 &&
  placesKm.every((placeKm) => Math.abs(placeKm - atKm) > BESIDE_KM);

type Dials = Record<Commodity, GaugeDial | null>;

const columnsOf = (dials: Dials): SheetColumn[] => [
  { ...heads().at, lean: 'right', width: 8 },
  { ...heads().place, lean: 'left', width: 30 },
  ...COMMODITIES.flatMap((commodity): SheetColumn[] => [
    { ...heads().on(commodity), lean: 'right', width: 10, startsGroup: true },
    ...(dials[commodity] === null ? [] : [{ ...heads().onGauge, lean: 'left' as const, width: 14 }]),
    { ...heads().back, lean: 'right', width: 9 },
    { ...heads().planned, lean: 'right', width: 9 },
  ]),
];

function rowOf(gauged: GaugeRow, { planned, dials }: { planned: PlannedTrip; dials: Dials }) {
  const { at, atKm } = gauged;
  return row([
    cell(at === 'turn-back' ? kmBefore(atKm) : kmText(atKm), { strong: true }),
    cell(gaugePlace(gauged)),
    ...COMMODITIES.flatMap((commodity): SheetCell[] => {
      const { onL, backL, plannedL } = gauged[commodity];
      const dial = dials[commodity];
      const lacks = onL > plannedL + 1e-6;
      return [
        cell(wholeNeeded(onL), { strong: true, verdict: lacks ? 'short' : null }),
        ...(dial === null ? [] : [cell(markText(onL, dial, cansAt(planned, commodity, gauged)))]),
        cell(backL === null ? words().noWay : wholeNeeded(backL)),
        cell(plannedL < 0 ? words().dry : aboardText(plannedL, onL)),
      ];
    }),
  ]);
}

function dialLines(planned: PlannedTrip, dials: Dials): string[] {
  const shown = COMMODITIES.filter((each) => dials[each] !== null);
  const others = COMMODITIES.filter((each) => dials[each] === null);
  return [
    ...(shown.length === 0
      ? []
      : [words().eighths(printed().lines.both(shown), planned.gauge.basis === 'plan')]),
    ...(others.length === 0 ? [] : [words().noGauge(printed().lines.both(others))]),
  ];
}
