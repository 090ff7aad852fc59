import type { Caution } from '../../phrases/cautions.ts';
import type { UntoldCondition } from '../../phrases/rig/treatment-stages.ts';
import type { TreatmentReport } from '../line/report.ts';
import { feedFactor, LEAST_FLOW, type TapResult } from '../line/taps.ts';
import { stagesToDrink, type Treatment } from '../line/treatment.ts';
import type { Journey } from './journey.ts';

/** What a line came to, before it is warned of. */
export interface LineResults {
  readonly line: Treatment;
  readonly report: Omit<TreatmentReport, 'cautions'>;
  readonly journey: Journey;
  readonly taps: readonly TapResult[];
  /** Conditions that count as met although nobody told, each as it will be met on the way. */
  readonly unmeasured: readonly UntoldCondition[];
}

/** What to know about a line on a trip: what falls short, what starves, what runs out, what may freeze. */
export const treatmentCautions = ({ line, report, journey, taps, unmeasured }: LineResults): Caution[] => [
  ...targetCautions(report),
  ...stageCautions(line, journey),
  ...unmeasuredCautions(unmeasured),
  ...taps.flatMap(tapCautions),
  ...cartridgeCautions(report),
  ...wayCautions(line),
];

const targetCautions = ({ meetsTarget, target, lacks }: LineResults['report']): Caution[] =>
  meetsTarget ? [] : [{ code: 'treatment-below-target', facts: { target: target.name, lacks } }];

const unmeasuredCautions = (conditions: readonly UntoldCondition[]): Caution[] =>
  conditions.length === 0 ? [] : [{ code: 'treatment-unmeasured', facts: { conditions } }];

function stageCautions(line: Treatment, { altitudeM, coldestNightC }: Journey): Caution[] {
  const cautions: Caution[] = [];
  const stages = line.stages.filter((stage) => stage.mayHaveFrozen).map((stage) => stage.name);
  if (stages.length > 0) cautions.push({ code: 'treatment-frozen', facts: { stages } });
  else if (coldestNightC !== null && coldestNightC <= 0) {
    cautions.push({ code: 'treatment-may-freeze', facts: { nightC: coldestNightC } });
  }
  if (altitudeM === null && line.stages.some((stage) => stage.kind === 'boiling')) {
    cautions.push({ code: 'boiling-height-unknown', facts: {} });
  }
  return cautions;
}

function tapCautions({ report, missing }: TapResult): Caution[] {
  const cautions: Caution[] = [];
  const { name: tap, use, grade, starves, flowLPerMin } = report;
  if (missing.length > 0) cautions.push({ code: 'tap-flow-unknown', facts: { tap, missing } });
  if (starves) {
    const facts = { tap, use, lPerMin: flowLPerMin ?? 0, leastLPerMin: LEAST_FLOW[use] };
    cautions.push({ code: 'tap-starves', facts });
  }
  // Dishes touch what is eaten: a kitchen tap is held to the grade of drinking.
  if (use !== 'shower' && grade !== 'drinking') {
    cautions.push({ code: 'tap-not-drinking', facts: { tap, use } });
  }
  return cautions;
}

const cartridgeCautions = ({ cartridges }: LineResults['report']): Caution[] =>
  cartridges.flatMap(({ name, leftLitres, litres, backwash }): Caution[] => {
    if (leftLitres === null || leftLitres >= 0) return [];
    return [{ code: 'cartridge-spent', facts: { name, litres, beyondL: -leftLitres, backwash } }];
  });

function wayCautions(line: Treatment): Caution[] {
  if (line.at !== 'tap') return [];
  const feed = feedFactor(line.stages, 0, stagesToDrink(line));
  return [
    { code: 'treatment-at-tap', facts: {} },
    ...(feed > 1 ? [{ code: 'osmosis-waste', facts: { feed } } as const] : []),
  ];
}
