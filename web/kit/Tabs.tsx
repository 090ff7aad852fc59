import { type KeyboardEvent, type ReactNode, useId } from 'react';

interface TabsProps<Key extends string> {
  /** What they are about, for those who only hear it. */
  label: string;
  tabs: readonly { key: Key; words: string }[];
  selected: Key;
  onSelect: (key: Key) => void;
  /** What stands in the same bar and is no tab. */
  beside?: ReactNode;
  children: ReactNode;
}

/** Where a key leads from one of `count` tabs; null for a key that leads nowhere. */
function tabAfter(key: string, at: number, count: number): number | null {
  switch (key) {
    case 'ArrowRight':
      return (at + 1) % count;
    case 'ArrowLeft':
      return (at + count - 1) % count;
    case 'Home':
      return 0;
    case 'End':
      return count - 1;
    default:
      return null;
  }
}

/**
 * Tabs and the panel of the one that is selected. One stop for the Tab key; arrows, Home and End go along them and select
 * as they go (the tabs pattern of the WAI-ARIA Authoring Practices).
 */
export function Tabs<Key extends string>(props: TabsProps<Key>) {
  const { label, tabs, selected, onSelect, beside, children } = props;
  const id = useId();
  const panelId = `${id}-panel`;
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    const at = tabs.findIndex(({ key }) => key === selected);
    const next = tabAfter(event.key, at, tabs.length);
    const tab = next === null ? undefined : tabs[next];
    if (next === null || tab === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    onSelect(tab.key);
    event.currentTarget.querySelectorAll<HTMLElement>('[role="tab"]')[next]?.focus();
  };
  return (
    <>
      <div className="tab-bar">
        <div className="tab-list" role="tablist" aria-label={label} onKeyDown={onKeyDown}>
          {tabs.map(({ key, words }) => (
            <button
              key={key}
              type="button"
              role="tab"
              id={`${id}-${key}`}
              aria-selected={key === selected}
              aria-controls={key === selected ? panelId : undefined}
              tabIndex={key === selected ? 0 : -1}
              onClick={() => onSelect(key)}
            >
              {words}
            </button>
          ))}
        </div>
        {beside}
      </div>
      {/* A stop of its own: it scrolls, and not every panel holds something that the keyboard can stand on. */}
      <div
        className="tab-panel"
        role="tabpanel"
        id={panelId}
        aria-labelledby={`${id}-${selected}`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard (WCAG 2.1.1)
        tabIndex={0}
      >
        {children}
      </div>
    </>
  );
}
