import { createElement, Fragment, type ReactNode } from 'react';
import type { Sentence, SentencePart } from '../../server/contract/analysis.ts';
import type { UnitSystem } from '../units/units.ts';
import { partText } from '../words/sentence.ts';

/** Sentences run on in one paragraph, quantities in the reader's units, strong parts marked by their verdict. */
export function Sentences(props: {
  sentences: readonly Sentence[];
  units: UnitSystem;
  /** What stands before the first sentence, in the same paragraph. */
  children?: ReactNode;
}) {
  const { sentences, units } = props;
  const parts = sentences.flatMap((sentence, index): ReactNode[] => [
    ...(index > 0 ? [' '] : []),
    ...sentence.map((part) => partNode(part, units)),
  ]);
  // Spread, since parts of a sentence have no identity beyond their place.
  return createElement('p', null, props.children, ...parts);
}

function partNode(part: SentencePart, units: UnitSystem): ReactNode {
  const text = partText(part, units);
  if (typeof part === 'string') return createElement(Fragment, null, text);
  if (!('strong' in part)) return <span className="quantity">{text}</span>;
  return <strong className={part.verdict === undefined ? '' : `words-${part.verdict}`}>{text}</strong>;
}
