import type { Caution } from '../../phrases/cautions.ts';
import type { StretchHeat } from '../../phrases/rig/crew.ts';
import type { Assumption } from '../../quantity/assumption.ts';
import type { Rig } from '../../rig/rig.ts';
import { saidBy } from '../../supply/tags/said-by.ts';
import type { Trip } from '../../trip/settle-trip.ts';
import { heatCautions } from './crew-cautions.ts';
import { addedPerDay, heatThere } from './stretch-heat.ts';
import type { HeatOnRoute } from './water-use.ts';

export interface HeatReport {
  readonly stretches: readonly HeatOnRoute[];
  readonly assumptions: readonly Assumption[];
  readonly cautions: readonly Caution[];
}

/** What the heat told of stretches comes to on a route so long, and what is to be said of it. */
export function heatOnRoute(rig: Rig, trip: Pick<Trip, 'heat'>, lengthM: number): HeatReport {
  const reports = trip.heat.map((stretch, index) => reportOf(rig, { stretch, index, lengthM }));
  return {
    stretches: reports.flatMap((report) => report.stretches),
    assumptions: reports.flatMap((report) => report.assumptions),
    cautions: reports.flatMap((report) => report.cautions),
  };
}

interface Told {
  readonly stretch: Trip['heat'][number];
  readonly index: number;
  readonly lengthM: number;
}

function reportOf({ crew, water }: Rig, { stretch, index, lengthM }: Told): HeatReport {
  const nothing = { stretches: [], assumptions: [], cautions: [] };
  const span = { fromM: stretch.fromM, toM: Math.min(stretch.toM, lengthM) };
  if (span.fromM >= lengthM)
    return { ...nothing, cautions: [{ code: 'heat-off-route', facts: { atM: stretch.fromM }, ...span }] };
  if (crew === null) return { ...nothing, cautions: [{ code: 'heat-without-crew', facts: {}, ...span }] };
  const addedL = addedPerDay(crew, stretch);
  const litresPerDay = water.litresPerDay.high + addedL;
  const facts = { ...span, ...heatFacts(stretch), litresPerDay, addedPerDay: addedL };
  return {
    stretches: [{ ...span, litresPerDay, addedPerDay: addedL }],
    assumptions: [
      {
        path: `/trip/heat/${index}`,
        value: { phrase: 'heat-of-stretch', facts },
        why: { phrase: 'noted-by-you', facts: { on: stretch.on, ...saidBy(stretch) } },
      },
    ],
    cautions:
      addedL === 0
        ? []
        : heatCautions(crew.file, heatThere(crew.file, stretch)).map((one) => ({ ...one, ...span })),
  };
}

const heatFacts = ({ temperatureC, wbgtC }: Trip['heat'][number]): StretchHeat => ({
  temperatureC: temperatureC ?? null,
  wbgtC: wbgtC ?? null,
});
