import type { Commodity } from '../../contract/common.ts';
import type { Basis } from '../plan/drive/basis.ts';
import { runOf } from '../plan/drive/run.ts';
import { type GaugeRun, gaugeRunOf } from '../plan/gauge/gauge-run.ts';
import { byCommodity } from '../plan/side/other-of.ts';
import { failedStretches } from '../plan/what-if/changed/failed-stretches.ts';

/** A run over a supply that gives nothing. */
export interface RunOver {
  readonly id: string;
  readonly run: GaugeRun;
}

/** What the cab view is reckoned from, for one commodity. */
export interface CabSideRuns {
  /** All of the route, in its order. */
  readonly planned: readonly GaugeRun[];
  /** For each supply that is used, the runs that come of its giving nothing: it is gone to in vain. */
  readonly over: readonly RunOver[];
}

export type CabRuns = Readonly<Record<Commodity, CabSideRuns>>;

/** What the cab view of a trip is reckoned from. */
export interface CabBasis {
  readonly kind: Basis['kind'];
  readonly runs: CabRuns;
  /** Of one full can. */
  readonly canL: Readonly<Record<Commodity, number>>;
  /** Of all water, at the rate that verdicts use. */
  readonly waterLPerDay: number;
}

export const cabBasisOf = (basis: Basis): CabBasis => ({
  kind: basis.kind,
  runs: cabRunsOf(basis),
  canL: byCommodity((commodity) => basis.sides[commodity].side.canL),
  waterLPerDay: basis.sides.water.side.course.rig.water.litresPerDay.high,
});

/** Without a plan all supplies that count are used: where they are more, no run over one of them is kept (ours). */
const MOST_OVER = 300;

/** The runs of a plan, or of the gaps where there is none, with those over each supply alone that is used. */
export const cabRunsOf = (basis: Basis): CabRuns =>
  byCommodity((commodity) => {
    const { stretches } = basis.sides[commodity];
    const ids = new Set(
      stretches.flatMap(({ to }) => (to.kind === 'passing' && to.id !== null ? [to.id] : [])),
    );
    return {
      planned: stretches.map((stretch) => gaugeRunOf(runOf(stretch))),
      over: (ids.size > MOST_OVER ? [] : [...ids]).flatMap((id) =>
        failedStretches(basis, commodity, (edge) => edge.id === id).map(({ stretch }) => ({
          id,
          run: gaugeRunOf(runOf(stretch)),
        })),
      ),
    };
  });
