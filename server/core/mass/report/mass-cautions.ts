import type { Position } from '../../../contract/vehicle.ts';
import type { Caution } from '../../phrases/cautions.ts';
import type { Bearer } from '../../phrases/rig/mass.ts';
import { SLACK } from '../../quantity/slack.ts';
import type { MassModel } from '../settle-mass.ts';
import type { MassReport, MassState } from './masses.ts';

/** What to mind about the vehicle's masses. */
export const massCautions = (mass: MassReport, model: MassModel): Caution[] => [
  ...limitCautions(mass),
  ...liftCautions(mass),
  ...untoldCautions(mass, model),
  ...roofCautions(mass),
  ...overhangCautions(mass, model),
  ...cabinCautions(model),
  ...carriedCautions(mass),
];

type LeftKg = (state: MassState) => number | null;

const LEFT_KG: readonly { bearer: Bearer; leftKg: LeftKg }[] = [
  { bearer: 'vehicle', leftKg: (state) => state.payloadLeftKg },
  { bearer: 'front', leftKg: (state) => state.front?.leftKg ?? null },
  { bearer: 'rear', leftKg: (state) => state.rear?.leftKg ?? null },
];

/** A limit that is broken somewhere on the way, or, if only then, with everything filled. */
const limitCautions = ({ states }: MassReport): Caution[] =>
  LEFT_KG.flatMap(({ bearer, leftKg }): Caution[] => {
    const driven = states.filter(({ kind }) => kind === 'along' || kind === 'departure');
    const worst = leastOf(driven, leftKg);
    if (worst !== null && worst.kg < -SLACK) {
      const place = worst.atM === null ? {} : { fromM: worst.atM, toM: worst.atM };
      return [{ code: 'mass-over-limit', facts: { bearer, overKg: -worst.kg }, ...place }];
    }
    const filled = states.filter(({ kind }) => kind === 'full');
    const full = leastOf(filled, leftKg);
    if (full === null || full.kg >= -SLACK) return [];
    return [{ code: 'mass-over-limit-full', facts: { bearer, overKg: -full.kg } }];
  });

/** The least that is left to a limit, and where, the first of ties; null where no state tells it. */
function leastOf(states: readonly MassState[], leftKg: LeftKg): { kg: number; atM: number | null } | null {
  let least: { kg: number; atM: number | null } | null = null;
  for (const state of states) {
    const kg = leftKg(state);
    if (kg !== null && (least === null || kg < least.kg)) least = { kg, atM: state.atM };
  }
  return least;
}

const liftCautions = ({ states }: MassReport): Caution[] =>
  (['front', 'rear'] as const)
    .filter((axle) => states.some((state) => state[axle] !== null && state[axle].kg <= 0))
    .map((axle) => ({ code: 'axle-lifts', facts: { axle } }));

/** What was not told, so that nobody takes silence for "within the limits". */
function untoldCautions({ missing, states }: MassReport, { vehicle }: MassModel): Caution[] {
  const cautions: Caution[] = [];
  if (missing.length > 0) cautions.push({ code: 'mass-incomplete', facts: { missing } });
  const { permitted } = vehicle;
  const [first] = states;
  const limits = [
    { key: 'totalKg', told: permitted?.totalKg !== undefined },
    { key: 'frontKg', told: permitted?.frontKg !== undefined || first?.front === null },
    { key: 'rearKg', told: permitted?.rearKg !== undefined || first?.rear === null },
  ];
  const untold = limits.filter(({ told }) => !told).map(({ key }) => `/vehicle/permitted/${key}`);
  if (untold.length > 0) cautions.push({ code: 'mass-limit-unknown', facts: { missing: untold } });
  const steps = vehicle.axleLift?.steps.length;
  if (steps !== undefined && steps < 3) cautions.push({ code: 'axle-lift-few', facts: { steps } });
  return cautions;
}

function roofCautions({ roof, states }: MassReport): Caution[] {
  if (roof === null || roof.kg <= 0) return [];
  const { kg, limitKg } = roof;
  const cgHeightM = states.find((state) => state.kind === 'full')?.cgHeightM ?? null;
  return limitKg === null || kg <= limitKg
    ? [{ code: 'roof-load', facts: { kg, limitKg, cgHeightM } }]
    : [{ code: 'roof-over-limit', facts: { kg, limitKg, cgHeightM } }];
}

function overhangCautions({ behindRearAxle }: MassReport, { vehicle, containers }: MassModel): Caution[] {
  if (behindRearAxle === null || behindRearAxle.kg <= 0) return [];
  const overhang: Caution = { code: 'rear-overhang', facts: behindRearAxle };
  const { wheelbaseM, bodyRearOverhangM, gear = [] } = vehicle;
  if (wheelbaseM === undefined || bodyRearOverhangM === undefined) return [overhang];
  const named = gear.map(({ name, position }) => ({
    name: { phrase: 'own-name', facts: { name } } as const,
    position,
  }));
  const names = [...containers, ...named]
    .filter(({ position }) => (position?.behindFrontAxleM ?? 0) > wheelbaseM + bodyRearOverhangM)
    .map(({ name }) => name);
  return names.length === 0 ? [overhang] : [overhang, { code: 'behind-body', facts: { names } }];
}

function cabinCautions({ vehicle, containers }: MassModel): Caution[] {
  const { cabin } = vehicle;
  if (cabin === undefined) return [];
  const inside = (position: Position | null) =>
    position !== null &&
    position.behindFrontAxleM >= cabin.fromM &&
    position.behindFrontAxleM <= cabin.toM &&
    position.heightM >= cabin.floorHeightM &&
    position.heightM < cabin.roofHeightM;
  return containers
    .filter(({ commodity, position }) => commodity === 'fuel' && inside(position))
    .map(({ name }) => ({ code: 'fuel-in-cabin', facts: { name } }));
}

function carriedCautions({ fuelLimits }: MassReport): Caution[] {
  const over = fuelLimits.filter((one) => one.over);
  return over.length === 0 ? [] : [{ code: 'carried-fuel', facts: { over } }];
}
