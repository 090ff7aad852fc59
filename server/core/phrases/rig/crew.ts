import type { WaterClass } from '../../../contract/common.ts';
import type { UseLevel, WaterGrade, WaterUseName, Work } from '../../../contract/crew.ts';
import type { NoFacts, Phrased } from '../said/said.ts';
import type { PlaceName } from '../said/supply-kinds.ts';

/** What the people of a rig should know of their water. */
export interface CrewCautions {
  /** `path` of the person in the rig file. */
  'drinking-below-survival': { path: string; leastL: number };
  'observed-below-need': { observedL: number; needL: number };
  'no-drinking-tank': NoFacts;
  'washing-at-source': NoFacts;
  'heat-unknown': NoFacts;
  'wbgt-outside-range': { temperatureC: number; fromC: number; toC: number };
  'intake-hour-limit': { litres: number; mostL: number };
  'intake-day-limit': { litres: number; mostL: number };
  'work-rest': { work: Work; workMinutes: number; restMinutes: number };
  'survival-days': { temperatureC: number; restingDays: number; walkingDays: number };
  /** Which hours were told. */
  'help-hours-unknown': { alarm: boolean; help: boolean };
  'reserve-in-one-place': { loss: Loss; safeL: number; reserveL: number };
  'heat-off-route': { atM: number };
  /** Heat is told of a stretch, and nobody who drinks. */
  'heat-without-crew': NoFacts;
  'cans-kept-for-washing': NoFacts;
  'start-grades-assumed': NoFacts;
  'water-lowered': { name: PlaceName; container: WaterClass };
  'washing-source-not-passed': { id: string };
  'washing-source-unfit': { id: string };
}

/** What one leak, pump or tap can empty. */
interface Losses {
  'tank-lost': { names: readonly string[] };
  'can-lost': NoFacts;
}
export type Loss = Phrased<Losses>;

/** Where the figures of a part of the crew's use come from. */
interface PartSources {
  'own-figure': NoFacts;
  /** Of the people's uses: levels in the order of the people; `own`: some figures are the user's. */
  'level-sources': { levels: readonly UseLevel[]; own: boolean; highOfOne: number };
  'first-of-washing': { litres: number };
  'pets-source': { sources: readonly PetSource[]; heat: boolean };
}
interface SplitSources {
  /** An observed figure split as the parts. */
  'split-of-own-figure': { of: PartSource };
  /** Litres from the tank for each at the tap. */
  'need-over-recovery': { feed: number };
}
export type PartSource = Phrased<PartSources>;
/** Where the figures of a use of water come from. */
export type UseSource = Phrased<PartSources & SplitSources>;

/** The heat of a stretch as it was told: in the shade, or as WBGT. */
export interface StretchHeat {
  readonly temperatureC: number | null;
  readonly wbgtC: number | null;
}

/** Why a water reserve is so many days: it lasts until help is there. */
interface HelpReasons {
  'hours-to-help': { alarmHours: number; helpHours: number };
}
export type HelpReason = Phrased<HelpReasons>;

/** Labels and sources of water use. */
export interface CrewPhrases extends HelpReasons, Losses, PartSources, SplitSources {
  'own-figure-for-all': NoFacts;
  /** Litres a day of all there, and of them those beyond what is used elsewhere. */
  'heat-of-stretch': StretchHeat & { fromM: number; toM: number; litresPerDay: number; addedPerDay: number };
  'use-of-grade': { use: WaterUseName; grade: WaterGrade; source: UseSource };
  'drinking-at-rest-mild': NoFacts;
  'beyond-a-body': { mostL: number };
  'drinking-at-rest-in-heat': { factor: number; wbgtC: number };
  'drinking-at-work': { hours: number; work: Work; litresPerHour: number; people: number };
  'heat-source': { measured: boolean; fromC: number; toC: number };
  'water-lowered-by': { name: PlaceName; container: WaterClass };
  'treated-at': { at: 'filling' | 'tap' | null };
}

/** Where the need of a pet comes from: the rule for dogs, the same for another animal, the user's own figure. */
export type PetSource = 'dog' | 'as-dog' | 'own';
