import type { ContainerEffect, MassReport, MassState, WorstFor } from '../../contract/vehicle.ts';
import { figure } from './lines/figures.ts';
import { plain } from './lines/plain.ts';
import { type Column, tableText } from './lines/table-text.ts';

const left = (head: string): Column => ({ head, unit: '', lean: 'left' });
const right = (head: string, unit: string): Column => ({ head, unit, lean: 'right' });

const STATE_COLUMNS: readonly Column[] = [
  left('when'),
  right('fuel', 'l'),
  right('water', 'l'),
  right('total', 'kg'),
  right('payload left', 'kg'),
  right('front', 'kg'),
  right('left', 'kg'),
  right('rear', 'kg'),
  right('left', 'kg'),
  right('right - left', 'kg'),
  right('cg height', 'm'),
  right('stability', 'track/2h'),
];

const CONTAINER_COLUMNS: readonly Column[] = [
  left('container'),
  right('holds', 'l'),
  right('full', 'kg'),
  right('front', 'kg'),
  right('rear', 'kg'),
  right('a litre: front', 'kg'),
  right('rear', 'kg'),
];

const WORST_WORDS: Record<WorstFor, string> = {
  total: 'total',
  front: 'front axle',
  rear: 'rear axle',
  side: 'left against right',
  stability: 'stability',
};

/** The vehicle's masses as text: states, then what each container does. Nothing for a rig that tells no vehicle. */
export function massText(mass: MassReport | null): string[] {
  if (mass === null) return [];
  const lines = ['Vehicle mass', ...tableText(STATE_COLUMNS, mass.states.map(stateCells))];
  lines.push(...tableText(CONTAINER_COLUMNS, mass.containers.map(containerCells)));
  for (const { what, kgPerLitre, source } of mass.densities) {
    lines.push(`${what}: ${kgPerLitre} kg/l, ${source}`);
  }
  const { roof, behindRearAxle } = mass;
  if (roof !== null) {
    const limit = roof.limitKg === null ? 'limit not told' : `limit ${figure(roof.limitKg)} kg`;
    lines.push(`on the roof, all full: ${figure(roof.kg)} kg (${limit})`);
  }
  if (behindRearAxle !== null) {
    const { kg, frontKg, rearKg } = behindRearAxle;
    lines.push(
      `behind the rear axle, all full: ${figure(kg)} kg, which put ${figure(frontKg)} kg on the front axle and ${figure(rearKg)} kg on the rear one`,
    );
  }
  return lines;
}

const orDash = (value: number | null, digits = 1): string =>
  value === null ? '-' : digits === 1 ? figure(value) : value.toFixed(digits);

function whenOf({ kind, atKm, worstFor }: MassState): string {
  if (kind === 'departure') return 'at departure';
  if (kind === 'full') return 'tanks and cans full';
  if (kind === 'empty') return 'nothing usable left';
  return `km ${orDash(atKm)}, worst for ${worstFor.map((respect) => WORST_WORDS[respect]).join(', ')}`;
}

const stateCells = (state: MassState): string[] => [
  whenOf(state),
  figure(state.fuelL),
  figure(state.waterL),
  figure(state.totalKg),
  orDash(state.payloadLeftKg),
  orDash(state.front?.kg ?? null),
  orDash(state.front?.leftKg ?? null),
  orDash(state.rear?.kg ?? null),
  orDash(state.rear?.leftKg ?? null),
  orDash(state.sideKg),
  orDash(state.cgHeightM, 2),
  orDash(state.stabilityFactor, 2),
];

const containerCells = (container: ContainerEffect): string[] => [
  plain(container.name),
  figure(container.litres),
  figure(container.whenFull.totalKg),
  orDash(container.whenFull.frontKg),
  orDash(container.whenFull.rearKg),
  orDash(container.perLitre?.frontKg ?? null, 2),
  orDash(container.perLitre?.rearKg ?? null, 2),
];
