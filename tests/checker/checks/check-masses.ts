import type { Commodity } from '../../../server/contract/common.ts';
import type { Plan, PlanLevel } from '../../../server/contract/plan.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { KerbIncludes, Vehicle } from '../../../server/contract/vehicle.ts';
import type { Facts } from '../reckoning/facts.ts';
import { COMMODITIES } from '../reckoning/legs-of-plan.ts';
import { isClose, type Notebook } from '../reckoning/notebook.ts';

/** Heaviest that its standard allows (EN 590), and water. */
const KG_PER_LITRE: Record<Commodity, number> = { fuel: 0.845, water: 1 };
/** Less than a gram is not over. */
const NOISE_KG = 1e-3;

/** A mass at a place behind the front axle, metres; null where that is not told. */
interface Mass {
  readonly kg: number;
  readonly behindM: number | null;
}

type Being = Pick<NonNullable<Vehicle['people']>[number], 'kg' | 'position'>;

interface Loads {
  readonly totalKg: number;
  /** Null where some place is not told. */
  readonly rearKg: number | null;
}

/** How several tanks may empty. */
type Emptying = 'together' | 'first' | 'last';
const EMPTYING: Record<NonNullable<Vehicle['tanksEmpty']> | 'untold', readonly Emptying[]> = {
  'in-order': ['first'],
  together: ['together'],
  untold: ['together', 'first', 'last'],
};

/** What the vehicle weighs at every place that is told, on arriving and on leaving, within what is permitted. */
export function checkMasses(book: Notebook, { rig }: Facts, plan: Plan): void {
  const { vehicle } = rig;
  book.holds('masses are told where the vehicle is', (plan.masses === null) === (vehicle === undefined), '');
  if (vehicle === undefined || plan.masses === null) return;
  const fixed = fixedMasses(rig, vehicle, plan.cans);
  const ways = EMPTYING[vehicle.tanksEmpty ?? 'untold'];
  const places = [
    ...new Set(COMMODITIES.flatMap((commodity) => plan.levels[commodity].map(({ atKm }) => atKm))),
  ];
  for (const km of places.sort((a, b) => a - b)) {
    const there = COMMODITIES.map((commodity) => levelsAt(plan.levels[commodity], km));
    const told = plan.masses.filter(({ atKm }) => atKm === km);
    book.holds('masses at every place', told.length > 0, `km ${km}`);
    for (const side of ['arriving', 'leaving'] as const) {
      const place = `km ${km}, ${side}`;
      const levels = there.map((all) => (side === 'arriving' ? all[0] : all.at(-1)));
      for (const [number, way] of ways.entries()) {
        const loads = weigh(vehicle, [...fixed, ...contents(rig, levels, way)]);
        checkLimits(book, vehicle, loads, `${place}, tanks empty ${way}`);
        if (number > 0) continue;
        const says = side === 'arriving' ? told[0] : told.at(-1);
        if (says === undefined) continue;
        book.holds(
          'total mass',
          isClose(says.totalKg, loads.totalKg),
          `${place}: says ${says.totalKg}, ${loads.totalKg}`,
        );
        if (loads.rearKg === null || says.rearKg === null || says.frontKg === null) continue;
        book.close('load of the rear axle', { says: says.rearKg, own: loads.rearKg }, place);
        book.close(
          'load of the front axle',
          { says: says.frontKg, own: loads.totalKg - loads.rearKg },
          place,
        );
      }
    }
  }
}

function checkLimits(
  book: Notebook,
  { permitted = {} }: Vehicle,
  { totalKg, rearKg }: Loads,
  place: string,
): void {
  const rows: [string, number | null, number | undefined][] = [
    ['total', totalKg, permitted.totalKg],
    ['rear axle', rearKg, permitted.rearKg],
    ['front axle', rearKg === null ? null : totalKg - rearKg, permitted.frontKg],
  ];
  for (const [limit, kg, mostKg] of rows)
    if (kg !== null && mostKg !== undefined)
      book.holds(
        `${limit} within what is permitted`,
        kg <= mostKg + NOISE_KG,
        `${place}: ${kg} of ${mostKg}`,
      );
}

/** Levels at a place, in order; one between its neighbours where none is told. */
function levelsAt(levels: readonly PlanLevel[], km: number): readonly Pick<PlanLevel, 'tankL' | 'cansL'>[] {
  const there = levels.filter(({ atKm }) => atKm === km);
  if (there.length > 0) return there;
  const index = levels.findIndex(({ atKm }) => atKm > km);
  const [before, after] = [levels[index - 1], levels[index]];
  if (before === undefined || after === undefined) throw new Error(`km ${km} is not on the route`);
  const share = (km - before.atKm) / (after.atKm - before.atKm);
  const between = (a: number, b: number) => a + share * (b - a);
  return [
    {
      tankL: between(before.tankL, after.tankL),
      cansL: before.cansL.map((litres, can) => between(litres, after.cansL[can] ?? litres)),
    },
  ];
}

function weigh(vehicle: Vehicle, masses: readonly Mass[]): Loads {
  const { wheelbaseM, axleKg } = vehicle;
  const totalKg = masses.reduce((sum, { kg }) => sum + kg, 0);
  if (wheelbaseM === undefined || axleKg === undefined) return { totalKg, rearKg: null };
  let rearKg = 0;
  for (const { kg, behindM } of masses) {
    if (kg === 0) continue;
    if (behindM === null) return { totalKg, rearKg: null };
    rearKg += (kg * behindM) / wheelbaseM;
  }
  return { totalKg, rearKg };
}

/** What of its filling and its driver a vehicle's papers have in its mass. */
type KerbContents = Exclude<KerbIncludes, string>;
const KERB: Record<Extract<KerbIncludes, string>, KerbContents> = {
  'running-order': { fuelPercent: 90, driverKg: 75 },
  'full-fuel-no-driver': { fuelPercent: 100, driverKg: 0 },
};

const behind = (position: { behindFrontAxleM: number } | undefined): number | null =>
  position?.behindFrontAxleM ?? null;

/** All that weighs the same all the way: the vehicle as it stands, less what its papers have in it, who and what rides in it. */
function fixedMasses(rig: RigFile, vehicle: Vehicle, cans: Plan['cans']): Mass[] {
  const {
    kerbKg,
    includes = 'full-fuel-no-driver',
    axleKg,
    wheelbaseM,
    people = [],
    pets = [],
    gear = [],
  } = vehicle;
  const inKerb: KerbContents = typeof includes === 'string' ? KERB[includes] : includes;
  const percent: Record<Commodity, number> = {
    fuel: inKerb.fuelPercent,
    water: inKerb.waterPercent ?? 0,
  };
  const riders: readonly Being[] =
    people.length > 0 ? people : [{ kg: inKerb.driverKg === 0 ? 75 : inKerb.driverKg }];
  const place = ({ kg, position }: Being): Mass => ({
    kg,
    behindM: behind(position),
  });
  const kerbM =
    axleKg === undefined || wheelbaseM === undefined
      ? null
      : (axleKg.rear / (axleKg.front + axleKg.rear)) * wheelbaseM;
  const driver = riders[0];
  // A driver as the papers have him, at no told place, cancels out.
  const ridersAndKerb =
    people.length === 0 && inKerb.driverKg > 0
      ? []
      : [...riders.map(place), { kg: -inKerb.driverKg, behindM: behind(driver?.position) }];
  return [
    { kg: kerbKg, behindM: kerbM },
    ...ridersAndKerb,
    ...pets.map(place),
    ...gear.map(place),
    ...COMMODITIES.flatMap((commodity) => [
      ...rig[commodity].tanks.flatMap(({ litres, unusableLitres = 0, emptyKg, position }): Mass[] => [
        {
          kg: emptyKg ?? (-litres * percent[commodity] * KG_PER_LITRE[commodity]) / 100,
          behindM: behind(position),
        },
        { kg: unusableLitres * KG_PER_LITRE[commodity], behindM: behind(position) },
      ]),
      {
        kg: cans[commodity] * (rig[commodity].cans?.emptyKg ?? 0),
        behindM: behind(rig[commodity].cans?.position),
      },
    ]),
  ];
}

/** What is in tanks and cans. */
function contents(
  rig: RigFile,
  levels: readonly (Pick<PlanLevel, 'tankL' | 'cansL'> | undefined)[],
  way: Emptying,
): Mass[] {
  return COMMODITIES.flatMap((commodity, index): Mass[] => {
    const level = levels[index];
    if (level === undefined) return [];
    const perLitre = KG_PER_LITRE[commodity];
    const { tanks, cans } = rig[commodity];
    const holds = tanks.map(
      ({ litres, fillPercent = 100, unusableLitres = 0 }) => (litres * fillPercent) / 100 - unusableLitres,
    );
    const inTanks = sharedOut(holds, Math.max(0, level.tankL), way);
    return [
      ...tanks.map(
        ({ position }, tank): Mass => ({ kg: (inTanks[tank] ?? 0) * perLitre, behindM: behind(position) }),
      ),
      {
        kg: level.cansL.reduce((sum, litres) => sum + litres, 0) * perLitre,
        behindM: behind(cans?.position),
      },
    ];
  });
}

/** Litres in each of several tanks that hold so many together. */
function sharedOut(holds: readonly number[], litres: number, way: Emptying): number[] {
  const all = holds.reduce((sum, each) => sum + each, 0);
  if (way === 'together') return holds.map((each) => (litres * each) / all);
  let left = litres;
  const fill = (each: number) => {
    const inIt = Math.min(each, left);
    left -= inIt;
    return inIt;
  };
  // That which empties first is filled last.
  return way === 'last' ? holds.map(fill) : [...holds].reverse().map(fill).reverse();
}
