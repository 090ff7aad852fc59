import { useCallback, useMemo, useRef, useState } from 'react';
import type { Address } from './address.ts';
import { type Focus, NO_FOCUS } from './focus.ts';
import type { Tab, View } from './tabs.ts';
import type { Go } from './use-address.ts';

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

/** Panel and choice are in the address; what is only pointed at or marked is not. */
export function useLook({ tab, view, gap, supply }: Address, go: Go): Look {
  const [pointed, setPointed] = useState(NOT_POINTED);
  const focus = useMemo((): Focus => ({ ...pointed, gap, supply }), [pointed, gap, supply]);
  const shown = useRef({ tab });
  shown.current = { tab };
  const onFocus = useCallback(
    ({ gap, supply, ...places }: Partial<Focus>) => {
      if (Object.keys(places).length > 0) setPointed((last) => ({ ...last, ...places }));
      if (gap === undefined && supply === undefined) return;
      go({
        ...(gap === undefined ? {} : { gap }),
        ...(supply === undefined ? {} : { supply }),
        tab: tabFor({ gap, supply }, shown.current.tab),
      });
    },
    [go],
  );
  const onTab = useCallback((next: Tab) => go({ tab: next }), [go]);
  const onView = useCallback((next: View) => go({ view: next }, 'over'), [go]);
  const startAfresh = useCallback(() => setPointed(NOT_POINTED), []);
  return { focus, tab, view, onFocus, onTab, onView, startAfresh };
}

const { gap: _gap, supply: _supply, ...NOT_POINTED } = NO_FOCUS;

/** What is chosen on the map or the strip shows in its table. */
export function tabFor(
  { supply, gap }: { supply?: Focus['supply'] | undefined; gap?: Focus['gap'] | undefined },
  last: Tab,
): Tab {
  if (supply !== undefined && supply !== null) return 'supplies';
  // While days are planned, or notes are taken, a click on the strip marks a place for them.
  if (gap !== undefined && gap !== null && last !== 'days' && last !== 'notes') return 'gaps';
  return last;
}
