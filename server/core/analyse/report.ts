import type { Commodity } from '../../contract/common.ts';
import { heatOnRoute } from '../crew/aboard/heat-on-route.ts';
import type { HeatOnRoute, WaterUse } from '../crew/aboard/water-use.ts';
import { waterUseOf } from '../crew/aboard/water-use-of.ts';
import { type FuelUseReport, fuelUseOf } from '../fuel/course/fuel-use-of.ts';
import type { Course, Edge } from '../gaps/course/course.ts';
import { startLevel } from '../gaps/course/start-level.ts';
import type { Gap, Report } from '../gaps/gap.ts';
import { gapsOf } from '../gaps/gaps-of.ts';
import { withRescues } from '../gaps/rescue.ts';
import { massReport } from '../mass/report/mass-report.ts';
import { nightInsideCautions } from '../pace/night-inside.ts';
import { paceAssumptions } from '../pace/pace-on.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { Assumption } from '../quantity/assumption.ts';
import type { SpanM } from '../quantity/span.ts';
import type { Rig } from '../rig/rig.ts';
import type { RouteLine } from '../route/route-line.ts';
import { routeTopM } from '../treatment/source/route-top.ts';
import { treatmentReport } from '../treatment/source/treatment-report.ts';
import type { Analysis } from './analysis.ts';
import { coverCautions } from './course-of.ts';
import type { Courses } from './courses.ts';
import type { DriveDays } from './drive-days.ts';
import type { Judged } from './judge.ts';
import type { Settled } from './settle.ts';

/** The gaps of one commodity with what they were reckoned with. */
export interface Side {
  readonly course: Course;
  /** Start, every passing that counts, end. */
  readonly edges: readonly Edge[];
  /** In the fixed tanks at the start, litres. */
  readonly startL: number;
}

export interface ReportedSide extends Side {
  readonly report: Report;
  readonly cautions: readonly Caution[];
}

export interface SideFacts {
  readonly settled: Settled;
  readonly route: RouteLine;
  readonly judged: Judged;
  readonly course: Course;
  readonly cover: readonly SpanM[];
  readonly edges: readonly Edge[];
}

/** One commodity: its gaps with what could rescue the short ones, over the whole route. */
export function reportSide(commodity: Commodity, facts: SideFacts): ReportedSide {
  const { settled, route, judged, course, cover, edges } = facts;
  const start = startLevel(settled.rig, settled.trip, commodity);
  const gaps = withRescues(gapsOf(course, edges, start.litres), {
    route,
    points: judged.points,
    commodity,
    detourFactor: settled.trip.detourFactor,
    reasonsOf: judged.ways,
    level: settled.trip.counting[commodity],
  });
  return {
    course,
    edges,
    startL: start.litres,
    report: reportOf(settled.rig, commodity, cover, gaps),
    cautions: [...start.cautions, ...coverCautions(course)],
  };
}

function reportOf(rig: Rig, commodity: Commodity, cover: readonly SpanM[], gaps: readonly Gap[]): Report {
  const store = rig[commodity];
  return {
    capacityL: store.drawableL,
    canL: store.canL,
    cansOwned: store.cansOwned,
    takesCans: store.takesCans,
    cover,
    gaps,
    longest: indexOfMost(gaps, (gap) => gap.lengthM),
    tightest: indexOfMost(gaps, (gap) => -Math.min(gap.marginL, gap.grades?.drinking.marginL ?? gap.marginL)),
  };
}

/** Index of the greatest figure, the first of ties. */
function indexOfMost(gaps: readonly Gap[], figure: (gap: Gap) => number): number {
  const figures = gaps.map(figure);
  return Math.max(0, figures.indexOf(Math.max(...figures)));
}

export interface UseFacts {
  readonly settled: Settled;
  readonly route: RouteLine;
  readonly drive: DriveDays;
  readonly judged: Judged;
  readonly courses: Courses;
  readonly fuel: ReportedSide;
  readonly water: ReportedSide;
}

type Uses = Pick<Analysis, 'fuelUse' | 'waterUse' | 'treatment' | 'mass'>;

const waterOf = ({ settled, judged, water }: UseFacts, inHeat: readonly HeatOnRoute[]): WaterUse =>
  waterUseOf({
    rig: settled.rig,
    water: settled.rigFile.water,
    trip: settled.trip,
    aboardL: water.startL,
    passings: judged.passings,
    inHeat,
  });

/** What both commodities' litres, the treatment line and the masses come to, with all that is to be said of them. */
export function reportUses(facts: UseFacts): {
  uses: Uses;
  assumptions: readonly Assumption[];
  cautions: readonly Caution[];
} {
  const { settled, route, drive, judged, courses, fuel, water } = facts;
  const { rig, trip, rigFile } = settled;
  const { passings, points } = judged;
  const fuelUse: FuelUseReport = fuelUseOf({
    plan: courses.fuelPlan,
    course: fuel.course,
    file: rigFile.fuel,
    trip,
    passings,
    points,
  });
  const heat = heatOnRoute(rig, trip, route.lengthM);
  const waterUse = waterOf(facts, heat.stretches);
  const treatment =
    rig.treatment === null
      ? null
      : treatmentReport(rig.treatment, {
          litresPerDay: rig.water.tapLitresPerDay,
          days: water.report.gaps.reduce((days, gap) => days + gap.days, 0),
          altitudeM: routeTopM(route),
          coldestNightC: trip.coldestNightC,
        });
  const masses = massReport(rigFile, fuel.report, water.report);
  const { litresPerDay, reserve } = rig.water;
  return {
    uses: { fuelUse: fuelUse.fuelUse, waterUse, treatment, mass: masses?.mass ?? null },
    assumptions: [
      ...fuelUse.assumptions,
      ...heat.assumptions,
      ...(trip.surfaces.length === 0 ? [] : paceAssumptions(rig, drive.pace.surfaces)),
    ],
    cautions: [
      ...nightInsideCautions(drive.pace, water.report.gaps, litresPerDay.high, reserve.shareOfNeed),
      ...fuelUse.cautions,
      ...waterUse.cautions,
      ...heat.cautions,
      ...(treatment?.cautions ?? []),
      ...(masses?.cautions ?? []),
    ],
  };
}
