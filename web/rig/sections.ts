import type { ComponentType } from 'react';
import type { RigFile } from '../../server/contract/rig.ts';
import type { UnitSystem } from '../units.ts';
import { CrewSection } from '../water/CrewSection.tsx';
import { FuelSection } from './FuelSection.tsx';
import { PaceSection } from './PaceSection.tsx';
import { WaterSection } from './WaterSection.tsx';

/** One part of the rig's form; its fields know their values by the form's context. */
export interface RigSection {
  id: string;
  title: string;
  /** One plain sentence: what this part is for. */
  says: string;
  /** What stands in it, in a few words, shown while it is closed; empty when nothing was told. */
  summary: (rig: RigFile, units: UnitSystem) => string;
  /** Open from the start. */
  open?: boolean;
  Component: ComponentType;
}

/** The parts of the form in the order of thinking: vehicle, fuel, water and crew, treatment, pace, gear. */
export const RIG_SECTIONS: readonly RigSection[] = [
  {
    id: 'fuel',
    title: 'Fuel',
    says: 'What it runs on, how much it uses, and what it can hold.',
    summary: ({ fuel }) => fuel.kind,
    open: true,
    Component: FuelSection,
  },
  {
    id: 'water',
    title: 'Water',
    says: 'What all aboard use in a day, and what the tanks hold.',
    summary: () => '',
    open: true,
    Component: WaterSection,
  },
  {
    id: 'crew',
    title: 'Crew and heat',
    says: 'Who drinks from the tanks and in what heat: how much water goes in a day, and how long it lasts.',
    summary: ({ crew }) => {
      const count = (crew?.people ?? []).reduce((sum, person) => sum + (person.count ?? 1), 0);
      return crew === undefined ? '' : `${count} ${count === 1 ? 'person' : 'people'}`;
    },
    Component: CrewSection,
  },
  {
    id: 'pace',
    title: 'Pace',
    says: 'How long and how fast it drives in a day.',
    summary: () => '',
    Component: PaceSection,
  },
];
