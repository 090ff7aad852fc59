import type { WayOut } from '../../contract/plan.ts';
import type { EdgeM } from '../gaps/course.ts';
import { drive } from '../levels/drive.ts';
import { brokenStretch, placeText } from './breaks.ts';
import { fewestCans, legNeed } from './leg.ts';
import { type CarrySide, COMMODITIES } from './problem.ts';
import { problemOf } from './problem-of.ts';
import { edgeOf } from './show.ts';
import { solveCarry } from './solve.ts';
import { bare, type WaysOutContext } from './try-change.ts';

/** The latest place is sought to this, metres. */
const STEP_M = 100;

/** Supplies laid beforehand, one in each broken stretch: as late as the reserve lets the vehicle come to it. */
export function depotWaysOut(context: WaysOutContext): WayOut[] {
  const { reckoned } = context;
  const { problem } = problemOf(reckoned);
  const broken = COMMODITIES.filter((commodity) => brokenStretch(problem.sides[commodity]) !== null);
  const [commodity] = broken;
  // Where both commodities break, one depot is not enough.
  if (commodity === undefined || broken.length > 1) return [];
  const side = problem.sides[commodity];
  const stretch = brokenStretch(side)!;
  const place = latestPlace(side, stretch.from, stretch.to);
  if (place === null) return [];
  const moreEdges = { [commodity]: [place] };
  const { problem: withDepot } = problemOf(reckoned, { moreEdges });
  const solved = solveCarry(withDepot, context);
  if (solved.status !== 'found') return [];
  const legs = drive(withDepot.sides, solved.choice)[commodity];
  const into = legs.find(({ to }) => to.id === place.id);
  const out = legs.find(({ from }) => from.id === place.id);
  if (into === undefined || out === undefined) return [];
  // What it takes to go on with the reserve: not more than would be filled at a supply.
  const litres = Math.max(
    0,
    Math.ceil(
      Math.min(
        out.figures.departL - into.figures.arriveL,
        out.figures.needL + out.figures.reserveL - into.figures.arriveL,
      ) - 1e-9,
    ),
  );
  if (out.marginL - (out.figures.departL - into.figures.arriveL - litres) < -1e-6) return [];
  const text = `With ${litres} l of ${commodity} laid beforehand at km ${(place.atM / 1000).toFixed(1)}, the latest place that is reached with the reserve from ${placeText(edgeOf(side.edges[stretch.from]!))}, it can be done.`;
  return [
    {
      ...bare,
      kind: 'depot',
      text,
      cans: solved.choice.cans,
      amount: litres,
      unit: 'l',
      atKm: place.atM / 1000,
      commodity,
    },
  ];
}

/** The last place between two edges that the first can be left for with the reserve intact on arrival. */
function latestPlace(side: CarrySide, from: number, to: number): EdgeM | null {
  const { edges, mostCans } = side;
  const fromM = edges[from]!.atM;
  let low = 0;
  let high = Math.floor((edges[to]!.atM - fromM) / STEP_M) - 1;
  const at = (steps: number): EdgeM => ({
    kind: 'passing',
    id: `depot/${side.commodity}`,
    name: 'the depot',
    atM: fromM + steps * STEP_M,
    detourM: 0,
    evidence: 'confirmed',
  });
  const reaches = (steps: number): boolean => {
    const trial = { ...side, edges: [...edges, at(steps)] };
    return fewestCans(side, from, legNeed(trial, from, edges.length), 0, mostCans) !== null;
  };
  if (high < 1 || !reaches(1)) return null;
  low = 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (reaches(middle)) low = middle;
    else high = middle - 1;
  }
  return at(low);
}
