import type { Focus } from './focus.ts';
import { TABS, type Tab, type View } from './tabs.ts';

/** What the address of the page names: the trip (null: the demo), the panel, and what is chosen. */
export interface Address {
  readonly trip: string | null;
  readonly tab: Tab;
  readonly view: View;
  readonly gap: Focus['gap'];
  readonly supply: string | null;
}

/** Reads the part of an address behind "?"; what it does not name, or names wrongly, is as at the beginning. */
export function readAddress(search: string): Address {
  const told = new URLSearchParams(search);
  const [, commodity, index] = /^(fuel|water)-(\d{1,5})$/.exec(told.get('gap') ?? '') ?? [];
  const isFuelOrWater = commodity === 'fuel' || commodity === 'water';
  return {
    trip: told.get('trip') || null,
    tab: TABS.find((each) => each === told.get('panel')) ?? 'gaps',
    view: told.get('view') === 'map' ? 'map' : 'strip',
    gap: isFuelOrWater ? { commodity, index: Number(index) } : null,
    supply: told.get('supply') || null,
  };
}

/** The same as text: "?trip=…&panel=…"; empty where all is as at the beginning. */
export function addressText({ trip, tab, view, gap, supply }: Address): string {
  const told = new URLSearchParams();
  if (trip !== null) told.set('trip', trip);
  if (tab !== 'gaps') told.set('panel', tab);
  if (view === 'map') told.set('view', 'map');
  if (gap !== null) told.set('gap', `${gap.commodity}-${gap.index}`);
  if (supply !== null) told.set('supply', supply);
  const text = told.toString();
  return text === '' ? '' : `?${text}`;
}
