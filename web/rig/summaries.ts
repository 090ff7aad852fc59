import type { RigFile } from '../../server/contract/rig.ts';
import { plural, t } from '../language/t.ts';
import { type QuantityKind, unitOf } from '../units/conversions.ts';
import { fieldText } from '../units/quantities.ts';
import { formatFigure, formatLength, formatLitres, formatMass, type UnitSystem } from '../units/units.ts';
import { FUEL_WORDS } from '../words/words.ts';

/** One part of the rig in a few words, for its heading; the rig is as reckoned with. */
type Summary = (rig: RigFile, units: UnitSystem) => string;

export const vehicleSummary: Summary = ({ vehicle }, units) => {
  if (vehicle === undefined) return t('not told');
  const base =
    vehicle.wheelbaseM === undefined ? '' : t`, wheelbase ${formatLength(vehicle.wheelbaseM, units)}`;
  return `${formatMass(vehicle.kerbKg, units)}${base}`;
};

export const fuelSummary: Summary = ({ fuel }, units) =>
  `${FUEL_WORDS[fuel.kind]}, ${formatLitres(heldL(fuel.tanks), units)}, ${typicalText(fuel.litresPer100Km, 'fuelUse', units)}`;

export const waterSummary: Summary = ({ water }, units) => {
  const use =
    water.litresPerDay === undefined ? '' : `, ${typicalText(water.litresPerDay, 'waterUse', units)}`;
  return `${formatLitres(heldL(water.tanks), units)}${use}`;
};

export const paceSummary: Summary = ({ pace }, units) =>
  t`${formatFigure(pace.hoursPerDay, 1)} hours a day, ${typicalText(pace.kmPerHour, 'speed', units)}`;

export const gearSummary: Summary = ({ vehicle }) => {
  if (vehicle === undefined) return '';
  const { people = [], pets = [], gear = [] } = vehicle;
  const counts = [
    counted(people.length, t('person'), t('people')),
    counted(pets.length, t('pet'), t('pets')),
    counted(gear.length, t('thing'), t('things')),
  ];
  return counts.filter((text) => text !== '').join(', ');
};

const heldL = (tanks: readonly { litres: number }[]): number =>
  tanks.reduce((sum, { litres }) => sum + litres, 0);

const counted = (count: number, one: string, many: string): string =>
  count === 0 ? '' : `${count} ${plural(count, one, many)}`;

function typicalText(use: number | { typical: number }, kind: QuantityKind, units: UnitSystem): string {
  const typical = typeof use === 'number' ? use : use.typical;
  return `${fieldText(typical, kind, units)}\u00a0${unitOf(kind, units)}`;
}
