import type { Reason } from '../../../contract/common.ts';
import type { TreatmentReport } from '../../../contract/treatment.ts';
import { roundedLog } from '../line/logs.ts';
import { feedFactor, LEAST_FLOW, type TapResult } from '../line/taps.ts';
import { stagesToDrink, type Treatment } from '../line/treatment.ts';
import type { Journey } from './journey.ts';

/** What to know about a line on a trip: what falls short, what starves, what runs out, what may freeze. */
export function treatmentCautions(
  line: Treatment,
  report: Omit<TreatmentReport, 'cautions'>,
  journey: Journey,
  taps: readonly TapResult[],
  unmeasured: readonly string[],
): Reason[] {
  return [
    ...targetCautions(report),
    ...stageCautions(line, journey),
    ...unmeasuredCautions(unmeasured),
    ...taps.flatMap(tapCautions),
    ...cartridgeCautions(report),
    ...wayCautions(line),
  ];
}

function targetCautions(report: Omit<TreatmentReport, 'cautions'>): Reason[] {
  if (report.meetsTarget) return [];
  const short = report.lacks.map(({ germs, log }) => `${germs} by ${roundedLog(log)} log`).join(', ');
  const text = `The treatment line falls short of its target (${report.target.name}) even in clear water: ${short}.`;
  return [{ code: 'treatment-below-target', text }];
}

/** Conditions that count as met although nobody told, each as it will be met on the way. */
function unmeasuredCautions(unmeasured: readonly string[]): Reason[] {
  if (unmeasured.length === 0) return [];
  const text = `The treatment line is reckoned with what nobody measured: ${unmeasured.join('; ')}.`;
  return [{ code: 'treatment-unmeasured', text }];
}

function stageCautions(line: Treatment, { altitudeM, coldestNightC }: Journey): Reason[] {
  const cautions: Reason[] = [];
  const frozen = line.stages.filter((stage) => stage.mayHaveFrozen).map((stage) => stage.name);
  if (frozen.length > 0) {
    const text = `May have frozen, so counts for nothing until it is tested or changed: ${frozen.join(', ')}.`;
    cautions.push({ code: 'treatment-frozen', text });
  } else if (coldestNightC !== null && coldestNightC <= 0) {
    const text = `Nights of ${coldestNightC} °C can tear membranes without showing it: drain or warm the treatment line, and count it for nothing once it has frozen.`;
    cautions.push({ code: 'treatment-may-freeze', text });
  }
  if (altitudeM === null && line.stages.some((stage) => stage.kind === 'boiling')) {
    const text =
      'The heights of the route are not known, so boiling is held to the longer rule: 3 minutes, as above 2,000 m (CDC).';
    cautions.push({ code: 'boiling-height-unknown', text });
  }
  return cautions;
}

function tapCautions({ report: tap, missing }: TapResult): Reason[] {
  const cautions: Reason[] = [];
  if (missing.length > 0) {
    const text = `Flow at tap ${tap.name} cannot be estimated: ${missing.join(', ')} not told. Measure it, or fill that in.`;
    cautions.push({ code: 'tap-flow-unknown', text });
  }
  if (tap.starves) {
    const text = `Tap ${tap.name} starves: ${roundedLog(tap.flowLPerMin ?? 0)} l/min, a ${tap.use} tap wants ${LEAST_FLOW[tap.use]} (ours).`;
    cautions.push({ code: 'tap-starves', text });
  }
  // Dishes touch what is eaten: a kitchen tap is held to the grade of drinking.
  if (tap.use !== 'shower' && tap.grade !== 'drinking') {
    const text = `Tap ${tap.name} (${tap.use}) comes before the target is reached: only for water that is fit to drink already.`;
    cautions.push({ code: 'tap-not-drinking', text });
  }
  return cautions;
}

function cartridgeCautions(report: Omit<TreatmentReport, 'cautions'>): Reason[] {
  return report.cartridges.flatMap(({ name, leftLitres, litres, backwash }) => {
    if (leftLitres === null || leftLitres >= 0) return [];
    const help = backwash ? 'Backwash it on the way, or carry a spare' : 'Carry a spare';
    const text = `${name} does not last the trip: ${Math.round(litres)} l go through, ${Math.round(-leftLitres)} l more than it has left. ${help}.`;
    return [{ code: 'cartridge-spent', text }];
  });
}

function wayCautions(line: Treatment): Reason[] {
  const cautions: Reason[] = [];
  if (line.at === 'tap') {
    const text =
      'Treatment is at the tap: tank and pipes before it hold raw water, and stay of that class until they are cleaned and disinfected (WHO/WEDC Technical Note 3).';
    cautions.push({ code: 'treatment-at-tap', text });
  }
  const upTo = stagesToDrink(line);
  const feed = feedFactor(line.stages, 0, upTo);
  if (feed > 1 && line.at === 'tap') {
    const text = `Reverse osmosis takes ${roundedLog(feed)} l from the tank for each litre at the tap; the rest is not in the water need unless it is led back.`;
    cautions.push({ code: 'osmosis-waste', text });
  }
  return cautions;
}
