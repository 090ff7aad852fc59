/** The panels beside the map, by what belongs together, in the order of asking: what is the answer, what is it made of, what is done about it. */
export const TAB_GROUPS = {
  answer: ['gaps'],
  supplies: ['supplies', 'notes'],
  vehicle: ['rig', 'compare'],
  trip: ['days', 'settings'],
  plan: ['carry', 'what-if'],
} as const satisfies Record<string, readonly [string, ...string[]]>;
export type TabGroup = keyof typeof TAB_GROUPS;
export type Tab = (typeof TAB_GROUPS)[TabGroup][number];

/** All of them, in that order. */
export const TABS: readonly Tab[] = Object.values(TAB_GROUPS).flat();

const GROUPS = Object.keys(TAB_GROUPS) as TabGroup[];

export const groupOf = (tab: Tab): TabGroup =>
  GROUPS.find((group) => TAB_GROUPS[group].some((each: Tab) => each === tab)) ?? 'answer';

export type View = 'strip' | 'map';
