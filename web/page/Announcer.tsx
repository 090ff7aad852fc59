import { useEffect, useState } from 'react';
import type { Analysis } from '../../server/contract/analysis.ts';
import { formatKm, type UnitSystem } from '../units/units.ts';
import { sentenceText } from '../words/sentence.ts';
import { commodityWords, VERDICT_WORDS, worstOf } from '../words/words.ts';

/** A change is told this long after the last one, so that typing does not stammer, ms (ours). */
const SETTLE_MS = 600;

/** Tells people who cannot see the page that the answer is another one, and which. */
export function Announcer({ analysis, units }: { analysis: Analysis | null; units: UnitSystem }) {
  const [told, setTold] = useState('');
  useEffect(() => {
    if (analysis === null) return;
    const timer = setTimeout(() => setTold(wordsFor(analysis, units)), SETTLE_MS);
    return () => clearTimeout(timer);
  }, [analysis, units]);
  return (
    <div className="only-read" role="status" aria-live="polite">
      {told}
    </div>
  );
}

function wordsFor(analysis: Analysis, units: UnitSystem): string {
  const each = (['fuel', 'water'] as const).map((commodity) => {
    const report = analysis[commodity];
    const longest = report.gaps[report.longest];
    const { verdict, count, of } = worstOf(report);
    const isWithoutData = analysis.noData.includes(commodity);
    return [
      `${isWithoutData ? 'No data on' : 'Longest stretch without'} ${commodityWords(commodity, analysis.rig.fuel.kind)}`,
      longest === undefined || isWithoutData ? 'unknown' : formatKm(longest.lengthKm, units),
      `${count} of ${of} stretches ${VERDICT_WORDS[verdict]}.`,
    ].join(', ');
  });
  return `${each.join(' ')} ${analysis.answer.todo.map((sentence) => sentenceText(sentence, units)).join(' ')}`;
}
