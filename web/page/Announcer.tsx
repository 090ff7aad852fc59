import { useEffect, useState } from 'react';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { headlineOf, worstWords } from '../answer/headline.ts';
import type { UnitSystem } from '../units/units.ts';
import { sentenceText } from '../words/sentence.ts';
import { capitalised, commodityWords } from '../words/words.ts';

/** A change is told this long after the last one, so that typing does not stammer, ms (ours). */
const SETTLE_MS = 600;

interface AnnouncerProps {
  analysis: Analysis | null;
  /** The plan to go by. */
  plan: PlanReply | null;
  units: UnitSystem;
}

/** Tells people who cannot see the page that the answer is another one, and which. */
export function Announcer({ analysis, plan, units }: AnnouncerProps) {
  const [told, setTold] = useState('');
  useEffect(() => {
    if (analysis === null) return;
    const timer = setTimeout(() => setTold(wordsFor(analysis, plan, units)), SETTLE_MS);
    return () => clearTimeout(timer);
  }, [analysis, plan, units]);
  return (
    <div className="only-read" role="status" aria-live="polite">
      {told}
    </div>
  );
}

function wordsFor(analysis: Analysis, plan: PlanReply | null, units: UnitSystem): string {
  const each = (['fuel', 'water'] as const).map((commodity) => {
    const headline = headlineOf(analysis, commodity, { plan, units });
    const name = capitalised(commodityWords(commodity, analysis.rig.fuel.kind));
    return `${name}: ${headline.words}. ${worstWords(headline, units)}`;
  });
  const todo = plan?.plan.status === 'found' ? [] : analysis.answer.todo;
  return [...each, ...todo.map((sentence) => sentenceText(sentence, units))].join(' ');
}
