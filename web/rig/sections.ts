import type { RigFile } from '../../server/contract/rig.ts';
import { type FormItem, type GroupItem, group, own } from '../form/items.ts';
import { FuelUseSection } from '../fuel-use/FuelUseSection.tsx';
import { plural, t } from '../language/t.ts';
import { LogSection } from '../log/LogSection.tsx';
import { LINE_ITEMS } from '../treatment/line-items.tsx';
import { TOLD_STAGES } from '../treatment/stage-items.ts';
import { TreatmentSection } from '../treatment/TreatmentSection.tsx';
import type { UnitSystem } from '../units/units.ts';
import { GEAR_ITEMS } from '../vehicle/gear-items.ts';
import { VehicleSection } from '../vehicle/VehicleSection.tsx';
import { VEHICLE_ITEMS } from '../vehicle/vehicle-items.ts';
import { CrewSection } from '../water/CrewSection.tsx';
import { CREW_ITEMS, HELP_ITEMS } from '../water/crew-items.tsx';
import { FUEL_ITEMS } from './fuel-items.ts';
import { PACE_ITEMS } from './pace-items.ts';
import { fuelSummary, gearSummary, paceSummary, vehicleSummary, waterSummary } from './summaries.ts';
import { WATER_ITEMS } from './water-items.ts';

/** One part of the rig's form; its fields know their values by the form's context. */
export interface RigSection {
  id: string;
  title: string;
  /** One plain sentence: what this part is for. */
  says: string;
  /** What stands in it, in a few words, shown while it is closed; empty when nothing was told. */
  summary: (rig: RigFile, units: UnitSystem) => string;
  /** Told by the reader, and therefore open from the start. */
  told: (rig: RigFile) => boolean;
  items: readonly FormItem[];
}

/** The parts of the form in the order of thinking: vehicle, fuel, water and crew, treatment, pace, gear. */
export const RIG_SECTIONS: readonly RigSection[] = [
  {
    id: 'vehicle',
    title: t('Vehicle'),
    says: t('What it weighs, its measures, and what it may weigh: the picture above is drawn from this.'),
    summary: vehicleSummary,
    told: ({ vehicle }) => vehicle !== undefined,
    items: [own('vehicle', VehicleSection, VEHICLE_ITEMS)],
  },
  {
    id: 'fuel',
    title: t('Fuel'),
    says: t('What it runs on, how much it uses, and what it can hold.'),
    summary: fuelSummary,
    told: () => true,
    items: FUEL_ITEMS,
  },
  {
    id: 'fuel-use',
    title: t('Range'),
    says: t('How far a full load goes, and what surface, load and climb make of it.'),
    summary: () => '',
    told: () => false,
    items: [own(t('fuel use'), FuelUseSection)],
  },
  {
    id: 'water',
    title: t('Water'),
    says: t('What all aboard use in a day, and what the tanks hold.'),
    summary: waterSummary,
    told: () => true,
    items: WATER_ITEMS,
  },
  {
    id: 'crew',
    title: t('Crew and heat'),
    says: t(
      'Who drinks from the tanks and in what heat: how much water goes in a day, and how long it lasts.',
    ),
    summary: ({ crew }) => {
      const count = (crew?.people ?? []).reduce((sum, person) => sum + (person.count ?? 1), 0);
      return crew === undefined ? '' : `${count} ${plural(count, t('person'), t('people'))}`;
    },
    told: ({ crew }) => crew !== undefined,
    items: [own('crew', CrewSection, [...CREW_ITEMS, ...HELP_ITEMS])],
  },
  {
    id: 'treatment',
    title: t('Treatment'),
    says: t(
      'What makes water fit to drink: stages between source, tank and taps, and which sources they are good for.',
    ),
    summary: ({ treatment }) => {
      const count = treatment?.stages.length ?? 0;
      return count === 0 ? '' : `${count} ${plural(count, t('stage'), t('stages'))}`;
    },
    told: ({ treatment }) => treatment !== undefined,
    items: [own('treatment', TreatmentSection, [...LINE_ITEMS, ...TOLD_STAGES])],
  },
  {
    id: 'pace',
    title: t('Pace'),
    says: t('How long and how fast it drives in a day.'),
    summary: paceSummary,
    told: ({ pace }) => pace !== undefined,
    items: PACE_ITEMS,
  },
  {
    id: 'gear',
    title: t('People and gear'),
    says: t('Who and what rides in it, and where: that loads the axles.'),
    summary: gearSummary,
    told: ({ vehicle }) =>
      [vehicle?.people, vehicle?.pets, vehicle?.gear].some((riders) => (riders?.length ?? 0) > 0),
    items: GEAR_ITEMS,
  },
  {
    id: 'log',
    title: t('Learn from a log'),
    says: t('What the vehicle and crew really used: fill-ups or a water log give low, typical and high.'),
    summary: () => '',
    told: () => false,
    items: [own('log', LogSection)],
  },
];

/** The same as one form, in which a field can be found also while its part is closed. */
export const asGroup = ({ title, items }: RigSection): GroupItem => group(title, items);
