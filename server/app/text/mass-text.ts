import type { ContainerEffect, MassReport, MassState } from '../../contract/vehicle.ts';
import { PRINTED } from '../../words/printed.ts';
import { figure } from './lines/figures.ts';
import { plain } from './lines/plain.ts';
import { type Column, left, right, tableText } from './lines/table-text.ts';

const WORDS = PRINTED.mass;

const STATE_COLUMNS: readonly Column[] = [
  left(WORDS.stateColumns.when),
  right(WORDS.stateColumns.fuel),
  right(WORDS.stateColumns.water),
  right(WORDS.stateColumns.total),
  right(WORDS.stateColumns.payloadLeft),
  right(WORDS.stateColumns.front),
  right(WORDS.stateColumns.frontLeft),
  right(WORDS.stateColumns.rear),
  right(WORDS.stateColumns.rearLeft),
  right(WORDS.stateColumns.side),
  right(WORDS.stateColumns.height),
  right(WORDS.stateColumns.stability),
];

const CONTAINER_COLUMNS: readonly Column[] = [
  left(WORDS.containerColumns.container),
  right(WORDS.containerColumns.holds),
  right(WORDS.containerColumns.full),
  right(WORDS.containerColumns.front),
  right(WORDS.containerColumns.rear),
  right(WORDS.containerColumns.litreFront),
  right(WORDS.containerColumns.litreRear),
];

/** The vehicle's masses as text: states, then what each container does. Nothing for a rig that tells no vehicle. */
export function massText(mass: MassReport | null): string[] {
  if (mass === null) return [];
  const lines = [WORDS.head, ...tableText(STATE_COLUMNS, mass.states.map(stateCells))];
  lines.push(...tableText(CONTAINER_COLUMNS, mass.containers.map(containerCells)));
  for (const { what, kgPerLitre, source } of mass.densities) {
    lines.push(WORDS.density(what, kgPerLitre, source));
  }
  const { roof, behindRearAxle } = mass;
  if (roof !== null) {
    const limit = roof.limitKg === null ? WORDS.noLimit : WORDS.limit(figure(roof.limitKg));
    lines.push(WORDS.roof(figure(roof.kg), limit));
  }
  if (behindRearAxle !== null) {
    const { kg, frontKg, rearKg } = behindRearAxle;
    lines.push(WORDS.behindRearAxle(figure(kg), { front: figure(frontKg), rear: figure(rearKg) }));
  }
  return lines;
}

const orDash = (value: number | null, digits = 1): string =>
  value === null ? '-' : digits === 1 ? figure(value) : value.toFixed(digits);

function whenOf({ kind, atKm, worstFor }: MassState): string {
  return kind === 'along' ? WORDS.worst(orDash(atKm), worstFor) : WORDS.states[kind];
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
