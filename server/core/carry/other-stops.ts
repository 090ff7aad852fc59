import type { Rescue } from '../../contract/analysis.ts';
import type { Commodity } from '../../contract/common.ts';
import type { WayOut } from '../../contract/plan.ts';
import type { EdgeM } from '../gaps/course.ts';
import { COMMODITIES } from './problem.ts';
import { bare, plannedCans, type WaysOutContext } from './try-change.ts';

/** No more points than this are tried for a commodity (ours). */
const MOST_TRIED = 8;

interface Candidate {
  commodity: Commodity;
  point: Pick<Rescue, 'id' | 'name' | 'kind' | 'atKm' | 'detourKm' | 'evidence' | 'counts'>;
}

/** Ways round by another stop: one that counts but lies farther off, and those that do not count, to telephone first. */
export function otherStopWaysOut(context: WaysOutContext): WayOut[] {
  const { reckoned } = context;
  return candidates(context).flatMap(({ commodity, point }): WayOut[] => {
    if (context.clock() >= context.until) return [];
    const edge: EdgeM = {
      kind: 'passing',
      id: point.id,
      name: point.name ?? point.kind,
      atM: point.atKm * 1000,
      detourM: point.detourKm * 1000,
      evidence: point.evidence,
    };
    const cans = plannedCans(reckoned, context, { moreEdges: { [commodity]: [edge] } });
    if (cans === null) return [];
    const km = 2 * point.detourKm;
    const where = `${point.name ?? `the ${point.kind}`} (km ${Math.round(point.atKm)}, ${km.toFixed(1)} km there and back)`;
    const text = point.counts
      ? `By way of ${where} it can be done.`
      : `Telephone first: if ${where} has ${commodity} fit for it, it can be done. As mapped it does not count.`;
    return [
      {
        ...bare,
        kind: 'other-stop',
        telephoneFirst: !point.counts,
        text,
        cans,
        amount: km,
        unit: 'km',
        atKm: point.atKm,
        id: point.id,
        commodity,
      },
    ];
  });
}

/** Points that rescue a short gap, then those of the corridor that do not count; each once. */
function candidates({ reckoned }: WaysOutContext): Candidate[] {
  const { analysis } = reckoned;
  return COMMODITIES.flatMap((commodity) => {
    const gaps = analysis[commodity].gaps;
    const failing = gaps.filter(({ verdict }) => verdict !== 'enough');
    const rescues = gaps.flatMap(({ rescue }) => rescue);
    const inCorridor = analysis.passings.filter(
      (passing) =>
        passing.commodity === commodity &&
        !passing.counts &&
        passing.waterClass !== 'none' &&
        failing.some(({ from, to }) => passing.atKm > from.atKm && passing.atKm < to.atKm),
    );
    const seen = new Set<string>();
    return [...rescues, ...inCorridor]
      .filter(({ id }) => !seen.has(id) && seen.add(id))
      .slice(0, MOST_TRIED)
      .map((point): Candidate => ({ commodity, point }));
  });
}
