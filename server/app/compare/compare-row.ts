import type { Analysis, Gap, Report } from '../../contract/analysis.ts';
import type { ComparedCommodity, ComparedMass, ComparedRig } from '../../contract/answers/compare.ts';
import type { AxleLoad, MassReport, MassState } from '../../contract/vehicle.ts';
import { VERDICT_RANK } from '../../core/gaps/verdict.ts';
import { at } from '../../core/lists/at.ts';

/** One rig's row of a comparison, all but its cautions. */
export const compareRow = (name: string, analysis: Analysis): Omit<ComparedRig, 'cautions'> => ({
  name,
  fuel: commodityOf(analysis.fuel),
  water: commodityOf(analysis.water),
  days: analysis.days.elapsedDays,
  mass: analysis.mass === null ? null : massOf(analysis.mass),
});

function commodityOf(report: Report): ComparedCommodity {
  const { gaps, capacityL, canL, cansOwned } = report;
  const index = worstOf(gaps);
  const { from, to, lengthKm, verdict, acrossNoData, needL, reserveL, marginL } = at(gaps, index);
  const extraCans = Math.max(...gaps.map((gap) => gap.extraCans));
  const verdicts = { enough: 0, 'into-reserve': 0, short: 0, unknown: 0 };
  for (const gap of gaps) verdicts[gap.verdict] += 1;
  return {
    capacityL,
    canL,
    cansOwned,
    worst: { index, from, to, lengthKm, verdict, acrossNoData, needL, reserveL, marginL },
    extraL: Math.max(...gaps.map((gap) => gap.extraL)),
    extraCans,
    cansMissing: Math.max(0, extraCans - cansOwned),
    verdicts,
    gaps: gaps.map((gap) => ({
      fromKm: gap.from.atKm,
      toKm: gap.to.atKm,
      verdict: gap.verdict,
      acrossNoData: gap.acrossNoData,
      marginL: gap.marginL,
    })),
  };
}

/** Index of the gap of the worst verdict, of these the one of least margin, the first of ties. */
function worstOf(gaps: readonly Gap[]): number {
  const isWorse = (a: Gap, b: Gap) =>
    VERDICT_RANK[a.verdict] === VERDICT_RANK[b.verdict]
      ? a.marginL < b.marginL
      : VERDICT_RANK[a.verdict] < VERDICT_RANK[b.verdict];
  return gaps.reduce((worst, gap, index) => (isWorse(gap, at(gaps, worst)) ? index : worst), 0);
}

function massOf({ states }: MassReport): ComparedMass {
  const figure = (of: (state: MassState) => number | null, badness: (value: number) => number) => {
    const found = worstState(states, (state) => {
      const value = of(state);
      return value === null ? null : badness(value);
    });
    const value = found === null ? null : of(found);
    return found === null || value === null ? null : { value, when: found.kind, atKm: found.atKm };
  };
  const axle = (of: (state: MassState) => AxleLoad | null) => {
    const found = worstState(states, (state) => of(state)?.kg ?? null);
    const load = found === null ? null : of(found);
    return found === null || load === null ? null : { ...load, when: found.kind, atKm: found.atKm };
  };
  const departure = states.find((state) => state.kind === 'departure');
  const totalKg = figure(
    (state) => state.totalKg,
    (kg) => kg,
  );
  if (departure === undefined || totalKg === null) throw new Error('a mass report without a departure');
  return {
    departure,
    totalKg,
    payloadLeftKg: figure(
      (state) => state.payloadLeftKg,
      (kg) => -kg,
    ),
    front: axle((state) => state.front),
    rear: axle((state) => state.rear),
    sideKg: figure((state) => state.sideKg, Math.abs),
    cgHeightM: figure(
      (state) => state.cgHeightM,
      (height) => height,
    ),
    stabilityFactor: figure(
      (state) => state.stabilityFactor,
      (factor) => -factor,
    ),
  };
}

/** The state of greatest badness, the first of ties; null where none has any. */
function worstState(
  states: readonly MassState[],
  badness: (state: MassState) => number | null,
): MassState | null {
  let worst: MassState | null = null;
  let most = Number.NEGATIVE_INFINITY;
  for (const state of states) {
    const bad = badness(state);
    if (bad === null || bad <= most) continue;
    worst = state;
    most = bad;
  }
  return worst;
}
