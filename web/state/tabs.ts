/** The panels beside the map. */
export const TABS = [
  'gaps',
  'supplies',
  'notes',
  'rig',
  'compare',
  'days',
  'settings',
  'carry',
  'what-if',
] as const;
export type Tab = (typeof TABS)[number];

/** What belongs together, in the order of asking: what is the answer, what is it made of, what is done about it. */
export const TAB_GROUPS = {
  answer: ['gaps'],
  supplies: ['supplies', 'notes'],
  vehicle: ['rig', 'compare'],
  trip: ['days', 'settings'],
  plan: ['carry', 'what-if'],
} as const satisfies Record<string, readonly [Tab, ...Tab[]]>;
export type TabGroup = keyof typeof TAB_GROUPS;

const GROUPS = Object.keys(TAB_GROUPS) as TabGroup[];

export const groupOf = (tab: Tab): TabGroup =>
  GROUPS.find((group) => TAB_GROUPS[group].some((each: Tab) => each === tab)) ?? 'answer';

export type View = 'strip' | 'map';
