import { arriveWith, type Held, leaveBound } from '../question/bound-stop.ts';
import { bearableL, type Hop, legNeed, tanksL, withFilling } from '../question/leg.ts';
import { alongL, hopWith } from '../question/legs.ts';
import type { CarrySide } from '../question/problem.ts';

/** What a supply is left with. */
export type Left = Held & Pick<Hop, 'filledL'>;
export type Hops = [Hop, ...Hop[]];

/** A supply that gives all that is wanted, left with so many cans full. */
export function leftFull(side: CarrySide, from: number, cans: number): Left {
  const tankL = tanksL(side, from);
  return { tankL, cans, filledL: tankL + cans * side.canL };
}

/** Hops to every later supply that can be reached. */
export function* hopsFrom(side: CarrySide, from: number, left: Left): Generator<Hop> {
  const mostL = bearableL(side, left.tankL, left.cans);
  for (let to = from + 1; to < side.edges.length; to += 1) {
    if (alongL(side, from, to) > mostL + 1) return;
    const hop = hopWith(side, from, to, left);
    if (hop.spareM >= 0) yield hop;
  }
}

/** What a bound supply at a hop's end can be left with: with every number of cans. */
export function* waysOnFrom(side: CarrySide, hop: Hop): Generator<Left> {
  const need = withFilling(side, legNeed(side, hop.from, hop.to), hop.from, hop.filledL);
  const arrived = arriveWith(side, hop, need.needL);
  let before = -1;
  for (let wanted = arrived.cans; wanted <= side.mostCans; wanted += 1) {
    const left = leaveBound(side, side.edges[hop.to]!, arrived, wanted);
    if (left.cans === before) return;
    before = left.cans;
    yield left;
  }
}
