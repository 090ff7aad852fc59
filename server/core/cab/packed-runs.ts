import type { Commodity } from '../../contract/common.ts';
import { at } from '../lists/at.ts';
import type { WayPoint } from '../plan/drive/way-points.ts';
import type { GaugeRun } from '../plan/gauge/gauge-run.ts';
import { byCommodity } from '../plan/side/other-of.ts';
import type { PlanEdge } from '../plan/side/plan-edge.ts';
import type { CabRuns, CabSideRuns } from './cab-runs.ts';

type Spans = Pick<GaugeRun, 'uncovered' | 'sketchy' | 'closed'>;

/**
 * A run for a file: its ends by their place in the list of all, its points without the names of their figures, spans only
 * where there are any.
 */
interface PackedRun
  extends Omit<GaugeRun, 'from' | 'to' | 'points' | 'onward' | keyof Spans>,
    Partial<Spans> {
  readonly from: number;
  readonly to: number;
  readonly points: readonly (readonly [number, number, number | null])[];
}

interface PackedSide {
  readonly onward: GaugeRun['onward'];
  readonly edges: readonly PlanEdge[];
  readonly planned: readonly PackedRun[];
  readonly over: readonly { readonly id: string; readonly run: PackedRun }[];
}

export type PackedRuns = Readonly<Record<Commodity, PackedSide>>;

/** Runs for a file, every figure as exact as it is. */
export const packRuns = (runs: CabRuns): PackedRuns => byCommodity((commodity) => packSide(runs[commodity]));

function packSide({ planned, over }: CabSideRuns): PackedSide {
  const edges: PlanEdge[] = [];
  const places = new Map<string, number>();
  const placeOf = (edge: PlanEdge): number => {
    const key = `${edge.kind} ${edge.atM} ${edge.id}`;
    const known = places.get(key);
    if (known !== undefined) return known;
    places.set(key, edges.length);
    edges.push(edge);
    return edges.length - 1;
  };
  const pack = ({
    from,
    to,
    points,
    onward: _,
    uncovered,
    sketchy,
    closed,
    ...run
  }: GaugeRun): PackedRun => ({
    ...run,
    ...(uncovered.length > 0 ? { uncovered } : {}),
    ...(sketchy.length > 0 ? { sketchy } : {}),
    ...(closed.length > 0 ? { closed } : {}),
    from: placeOf(from),
    to: placeOf(to),
    points: points.map(({ atM, litres, backL }) => [atM, litres, backL]),
  });
  const packedRuns = planned.map(pack);
  return {
    onward: planned[0]?.onward ?? null,
    edges,
    planned: packedRuns,
    over: over.map(({ id, run }) => ({ id, run: pack(run) })),
  };
}

/** The runs of a file. */
export const unpackRuns = (packed: PackedRuns): CabRuns =>
  byCommodity((commodity) => unpackSide(packed[commodity]));

function unpackSide({ onward, edges, planned, over }: PackedSide): CabSideRuns {
  const unpack = ({ from, to, points, ...run }: PackedRun): GaugeRun => {
    const [first, ...more] = points.map(([atM, litres, backL]): WayPoint => ({ atM, litres, backL }));
    if (first === undefined) throw new RangeError('a run without a place');
    const none = { uncovered: [], sketchy: [], closed: [] };
    return { ...none, ...run, onward, from: at(edges, from), to: at(edges, to), points: [first, ...more] };
  };
  return { planned: planned.map(unpack), over: over.map(({ id, run }) => ({ id, run: unpack(run) })) };
}
