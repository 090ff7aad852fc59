/** The panels beside the map, in their order. */
export const TABS = ['gaps', 'supplies', 'rig', 'days', 'carry', 'what-if', 'compare', 'notes'] as const;
export type Tab = (typeof TABS)[number];
export type View = 'strip' | 'map';
