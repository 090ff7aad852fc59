import type { ReactNode } from 'react';

/** What to do, set off from all else by being turned inside out. */
export const TodoBox = ({ label, children }: { label: string; children: ReactNode }) => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard (WCAG 2.1.1)
  <section className="todo" aria-labelledby="todo" tabIndex={0}>
    <h2 className="label" id="todo">
      {label}
    </h2>
    {children}
  </section>
);
