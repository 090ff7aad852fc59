import { useCallback, useState } from 'react';
import { type Focus, NO_FOCUS } from './focus.ts';

/** The panels beside the map, in their order. */
export const TABS = ['gaps', 'supplies', 'rig', 'days', 'carry', 'what-if', 'compare', 'notes'] as const;
export type Tab = (typeof TABS)[number];
export type View = 'strip' | 'map';

/** What the reader points at and looks at. */
export interface Look {
  focus: Focus;
  tab: Tab;
  /** Which of the two a narrow page shows. */
  view: View;
  onFocus: (next: Partial<Focus>) => void;
  onTab: (tab: Tab) => void;
  onView: (view: View) => void;
  /** Places of the route before mean nothing on another one. */
  startAfresh: () => void;
}

export function useLook(): Look {
  const [focus, setFocus] = useState<Focus>(NO_FOCUS);
  const [tab, onTab] = useState<Tab>('gaps');
  const [view, onView] = useState<View>('strip');
  const onFocus = useCallback((next: Partial<Focus>) => {
    setFocus((last) => ({ ...last, ...next }));
    onTab((last) => tabFor(next, last));
  }, []);
  const startAfresh = useCallback(() => {
    setFocus(NO_FOCUS);
    onTab('gaps');
  }, []);
  return { focus, tab, view, onFocus, onTab, onView, startAfresh };
}

/** What is chosen on the map or the strip shows in its table. */
export function tabFor({ supply, gap }: Partial<Focus>, last: Tab): Tab {
  if (supply !== undefined && supply !== null) return 'supplies';
  // While days are planned, or notes are taken, a click on the strip marks a place for them.
  if (gap !== undefined && gap !== null && last !== 'days' && last !== 'notes') return 'gaps';
  return last;
}
