import type { ReactNode } from 'react';
import { cabWords } from '../../server/words/cab.ts';

interface StepProps {
  /** What it steps, for those who do not see it. */
  what: string;
  by: readonly { readonly label: string; readonly step: number }[];
  onStep: (step: number) => void;
  children?: ReactNode;
}

/** Large buttons that lower a figure, the figure, and such that raise it. */
export function Step({ what, by, onStep, children }: StepProps) {
  return (
    <div className="step">
      {by.toReversed().map(({ label, step }) => (
        <button
          key={`less ${step}`}
          type="button"
          onClick={() => onStep(-step)}
          aria-label={cabWords().less(`${what}, ${label}`)}
        >
          −{label}
        </button>
      ))}
      {children}
      {by.map(({ label, step }) => (
        <button
          key={`more ${step}`}
          type="button"
          onClick={() => onStep(step)}
          aria-label={cabWords().more(`${what}, ${label}`)}
        >
          +{label}
        </button>
      ))}
    </div>
  );
}
