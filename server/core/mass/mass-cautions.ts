import type { Caution } from '../../contract/common.ts';
import type { MassReport, MassState, Position } from '../../contract/vehicle.ts';
import { SLACK } from '../quantity/slack.ts';
import type { MassModel } from './settle-mass.ts';

const kg = (value: number): string => `${Math.round(value * 10) / 10} kg`;

type Masses = Omit<MassReport, 'working'>;

/** What to mind about the vehicle's masses. */
export const massCautions = (mass: Masses, model: MassModel): Caution[] => [
  ...limitCautions(mass),
  ...untoldCautions(mass, model),
  ...roofCautions(mass),
  ...overhangCautions(mass, model),
  ...cabinCautions(model),
  ...carriedCautions(mass),
];

/** A limit that is broken somewhere on the way, or, if only then, with everything filled. */
function limitCautions({ states }: Masses): Caution[] {
  const rows: { what: string; leftKg: (state: MassState) => number | null; limit: string }[] = [
    { what: 'the vehicle', leftKg: (state) => state.payloadLeftKg, limit: 'what it may weigh' },
    { what: 'the front axle', leftKg: (state) => state.front?.leftKg ?? null, limit: 'what it may carry' },
    { what: 'the rear axle', leftKg: (state) => state.rear?.leftKg ?? null, limit: 'what it may carry' },
  ];
  const cautions: Caution[] = [];
  for (const { what, leftKg, limit } of rows) {
    const driven = states.filter((state) => state.kind === 'along' || state.kind === 'departure');
    const worst = leastOf(driven, leftKg);
    if (worst !== null && worst.value < -SLACK) {
      const text = `On this route ${what} is ${kg(-worst.value)} over ${limit}, cans not filled.`;
      cautions.push({ code: 'mass-over-limit', text, ...placeOf(worst.state) });
      continue;
    }
    const full = leastOf(
      states.filter((state) => state.kind === 'full'),
      leftKg,
    );
    if (full === null || full.value >= -SLACK) continue;
    const text = `With all tanks and cans full ${what} would be ${kg(-full.value)} over ${limit}.`;
    cautions.push({ code: 'mass-over-limit-full', text });
  }
  for (const side of ['front', 'rear'] as const) {
    if (!states.some((state) => (state[side]?.kg ?? 1) <= 0)) continue;
    const text = `The load lifts the ${side} axle off the ground: check masses and positions.`;
    cautions.push({ code: 'axle-lifts', text });
  }
  return cautions;
}

function leastOf(states: readonly MassState[], figure: (state: MassState) => number | null) {
  let least: { state: MassState; value: number } | null = null;
  for (const state of states) {
    const value = figure(state);
    if (value !== null && (least === null || value < least.value)) least = { state, value };
  }
  return least;
}

const placeOf = ({ atKm }: MassState): { fromKm?: number; toKm?: number } =>
  atKm === null ? {} : { fromKm: atKm, toKm: atKm };

/** What was not told, so that nobody takes silence for "within the limits". */
function untoldCautions({ missing, states }: Masses, { vehicle }: MassModel): Caution[] {
  const cautions: Caution[] = [];
  if (missing.length > 0) {
    const text = `Axle loads, sides or stability cannot be reckoned in full: the rig does not tell ${missing.join(', ')}.`;
    cautions.push({ code: 'mass-incomplete', text });
  }
  const untold = [
    ...(vehicle.permitted?.totalKg === undefined ? ['/vehicle/permitted/totalKg'] : []),
    ...(vehicle.permitted?.frontKg === undefined && states[0]?.front !== null
      ? ['/vehicle/permitted/frontKg']
      : []),
    ...(vehicle.permitted?.rearKg === undefined && states[0]?.rear !== null
      ? ['/vehicle/permitted/rearKg']
      : []),
  ];
  if (untold.length > 0) {
    const text = `Masses cannot be held against limits that the rig does not tell: ${untold.join(', ')}.`;
    cautions.push({ code: 'mass-limit-unknown', text });
  }
  const steps = vehicle.axleLift?.steps.length;
  if (steps !== undefined && steps < 3) {
    const text = `The height of the centre of gravity rests on ${steps} lifting ${steps === 1 ? 'step' : 'steps'}: take three or more (ISO 10392).`;
    cautions.push({ code: 'axle-lift-few', text });
  }
  return cautions;
}

function roofCautions({ roof, states }: Masses): Caution[] {
  if (roof === null || roof.kg <= 0) return [];
  const full = states.find((state) => state.kind === 'full');
  const height =
    full === undefined || full.cgHeightM === null
      ? ''
      : ` The centre of gravity is then ${full.cgHeightM.toFixed(2)} m up.`;
  if (roof.limitKg === null) {
    const text = `${kg(roof.kg)} on the roof; what the roof may carry was not told.${height}`;
    return [{ code: 'roof-load', text }];
  }
  if (roof.kg <= roof.limitKg) {
    const text = `${kg(roof.kg)} of the ${kg(roof.limitKg)} that the roof may carry: ask the maker whether that holds off the road.${height}`;
    return [{ code: 'roof-load', text }];
  }
  const text = `${kg(roof.kg)} on the roof, ${kg(roof.kg - roof.limitKg)} over what it may carry.${height}`;
  return [{ code: 'roof-over-limit', text }];
}

function overhangCautions({ behindRearAxle }: Masses, { vehicle, containers }: MassModel): Caution[] {
  if (behindRearAxle === null || behindRearAxle.kg <= 0) return [];
  const { kg: loadKg, frontKg, rearKg } = behindRearAxle;
  const cautions: Caution[] = [
    {
      code: 'rear-overhang',
      text: `${kg(loadKg)} behind the rear axle, containers full, put ${kg(rearKg)} on it and take ${kg(-frontKg)} off the front.`,
    },
  ];
  const { wheelbaseM, bodyRearOverhangM, gear = [] } = vehicle;
  if (wheelbaseM === undefined || bodyRearOverhangM === undefined) return cautions;
  const beyond = [...containers, ...gear]
    .filter(({ position }) => (position?.behindFrontAxleM ?? 0) > wheelbaseM + bodyRearOverhangM)
    .map(({ name }) => name);
  if (beyond.length > 0) {
    const text = `Behind the body: ${beyond.join(', ')}. Mind the carrier's own limit, lamps and number plate.`;
    cautions.push({ code: 'behind-body', text });
  }
  return cautions;
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
    .map(({ name }) => ({
      code: 'fuel-in-cabin',
      text: `Fuel in the cabin: ${name}. Its vapour can burn and poison: carry fuel outside, ventilated.`,
    }));
}

function carriedCautions({ fuelLimits }: Masses): Caution[] {
  const over = fuelLimits.filter((one) => one.over);
  if (over.length === 0) return [];
  const examples = over.map(
    ({ text, carried, limit, unit, source }) =>
      `${text}: ${Math.round(carried * 10) / 10} ${unit} against ${limit} ${unit} (${source})`,
  );
  const text = `More fuel than some countries let a vehicle carry. Examples, the rules of the place come first: ${examples.join('; ')}.`;
  return [{ code: 'carried-fuel', text }];
}
