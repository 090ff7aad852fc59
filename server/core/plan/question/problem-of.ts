import type { Commodity } from '../../../contract/common.ts';
import type { RigFile } from '../../../contract/rig.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import type { EdgeM } from '../../gaps/course.ts';
import { defaultCanKg } from '../../mass/containers.ts';
import { fuelKgPerLitre, WATER_KG_PER_L } from '../../mass/densities.ts';
import type { CodedCaution } from '../../phrases/cautions.ts';
import { massRoomOf } from './mass-room.ts';
import type { CarryProblem, CarrySide, SupplyEdge } from './problem.ts';
import { withTerms } from './supply-terms.ts';
import { fewerSupplies } from './thin-out.ts';

/** What a plan is asked for beyond what rig and trip say. */
export interface ProblemChanges {
  mostCans?: Record<Commodity, number>;
  /** Further supplies, put in their place of the route. */
  moreEdges?: Partial<Record<Commodity, SupplyEdge[]>>;
}

/** The problem that rig, trip and analysis pose, with what had to be assumed. */
export function problemOf(
  reckoned: Reckoned,
  changes: ProblemChanges = {},
): { problem: CarryProblem; cautions: CodedCaution[] } {
  const { rig, trip } = reckoned.analysis;
  const asked = trip.plan ?? {};
  const cautions: CodedCaution[] = [];
  const mostCans = changes.mostCans ?? {
    fuel: mostCansOf(rig, 'fuel', asked, cautions),
    water: mostCansOf(rig, 'water', asked, cautions),
  };
  const passedBy = new Set(asked.passBy ?? []);
  let thinned = false;
  const side = (commodity: Commodity): CarrySide => {
    const { course, edges, startL } = reckoned.sides[commodity];
    const store = course.rig[commodity];
    const fullAtStart = startL >= store.drawableL;
    const more = changes.moreEdges?.[commodity] ?? [];
    const termed = withTerms(reckoned, commodity, [...edges, ...more]);
    for (const caution of termed.cautions) {
      if (!cautions.some((other) => isSame(other, caution))) cautions.push(caution);
    }
    const usable = termed.edges
      .filter((edge) => edge.id === null || !passedBy.has(edge.id))
      .sort((a, b) => rankOf(a) - rankOf(b) || a.atM - b.atM || a.detourM - b.detourM || byId(a, b));
    const told = asked.fillAtStart?.[commodity];
    const whole: CarrySide = {
      commodity,
      course: commodity === 'fuel' ? reckoned.fuelWithLoad(loadKg(rig, mostCans)) : course,
      edges: usable,
      startL: told === true ? store.drawableL : startL,
      cansAtStart: told ?? fullAtStart,
      canL: store.canL,
      cansDrinkable: commodity === 'fuel' || rig.water.cans?.grade !== 'washing',
      mostCans: mostCans[commodity],
    };
    const { edges: looked, withinM } = fewerSupplies(whole, new Set(more));
    if (withinM === null) return whole;
    thinned = true;
    const facts = { commodity, passings: usable.length - 2, lookedAt: looked.length - 2, withinM };
    cautions.push({ code: 'plan-supplies-left-out', facts });
    return { ...whole, edges: looked };
  };
  const sides = { fuel: side('fuel'), water: side('water') };
  return {
    problem: { sides, room: massRoomOf(rig), oneFailure: null, thinned },
    cautions,
  };
}

/** The stops of both commodities give one caution where they are the same. */
const isSame = (a: CodedCaution, b: CodedCaution): boolean => JSON.stringify(a) === JSON.stringify(b);

/** The same plan in whatever order extracts list their objects. */
const byId = (a: EdgeM, b: EdgeM): number => {
  const [x, y] = [a.id ?? '', b.id ?? ''];
  return x < y ? -1 : x > y ? 1 : 0;
};

const rankOf = (edge: EdgeM): number => (edge.kind === 'start' ? 0 : edge.kind === 'end' ? 2 : 1);

/** Mass of one can, empty and of its filling, kg. */
export function canKgOf(rig: RigFile, commodity: Commodity): { empty: number; filling: number } {
  const { litres = 20, emptyKg, fillPercent = 100 } = rig[commodity].cans ?? {};
  const perLitre = commodity === 'fuel' ? fuelKgPerLitre(rig.fuel.kind) : WATER_KG_PER_L;
  return {
    empty: emptyKg ?? defaultCanKg(commodity, litres),
    filling: ((litres * fillPercent) / 100) * perLitre,
  };
}

/** What so many cans, all full, weigh beyond the owned ones empty: the heaviest that a plan may make the vehicle. */
export function loadKg(rig: RigFile, cans: Record<Commodity, number>): number {
  return (['fuel', 'water'] as const).reduce((sum, commodity) => {
    const { empty, filling } = canKgOf(rig, commodity);
    const owned = rig[commodity].cans?.owned ?? 0;
    return sum + cans[commodity] * filling + (cans[commodity] - owned) * empty;
  }, 0);
}

function mostCansOf(
  rig: RigFile,
  commodity: Commodity,
  asked: NonNullable<Reckoned['analysis']['trip']['plan']>,
  cautions: CodedCaution[],
): number {
  const most = asked.mostCans?.[commodity] ?? rig[commodity].cans?.owned ?? 0;
  if (asked.noneInside !== true || most === 0) return most;
  const position = rig[commodity].cans?.position;
  const cabin = rig.vehicle?.cabin;
  if (position === undefined || cabin === undefined) {
    cautions.push({ code: 'can-place-unknown', facts: { commodity } });
    return most;
  }
  const inside =
    position.behindFrontAxleM >= cabin.fromM &&
    position.behindFrontAxleM <= cabin.toM &&
    position.heightM >= cabin.floorHeightM &&
    position.heightM <= cabin.roofHeightM;
  return inside ? 0 : most;
}
