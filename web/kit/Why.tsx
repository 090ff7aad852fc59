import type { ReactNode } from 'react';
import './why.css';
import { tx } from '../language/tx.ts';

/** Where a figure comes from, opened by a small button beside it. `of`: which figure, for those who only hear "why". */
export function Why({ of, children }: { of: string; children: ReactNode }) {
  return (
    <details className="why">
      <summary>{tx`why${<span className="only-read"> {of}</span>}`}</summary>
      <div className="why-words">{children}</div>
    </details>
  );
}
