import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { CommodityAnswer, Todo } from '../../../web/answer/Answer.tsx';
import { sentenceText } from '../../../web/answer/sentence.ts';
import { sampleReply } from '../sample-reply.ts';

const { analysis } = sampleReply();
const textOf = (markup: string) => markup.replace(/<[^>]*>/g, '').replaceAll('\u00a0', ' ');

describe('the answer on top', () => {
  it('sets quantities in the units asked for', () => {
    const sentence = [
      'Runs dry at ',
      { quantity: 825, unit: 'km' as const, as: 'at' as const },
      ': ',
      { quantity: 9, unit: 'l' as const, as: 'much' as const },
      ' in ',
      { quantity: 3, unit: 'days' as const, as: 'much' as const },
      '.',
    ];
    expect(textOf(sentenceText(sentence, 'metric'))).toBe('Runs dry at km 825: 9 l in 3 days.');
    expect(textOf(sentenceText(sentence, 'us'))).toBe('Runs dry at mile 513: 2.4 gal in 3 days.');
  });

  it('names the longest stretch and the worst verdict of each commodity', () => {
    for (const commodity of ['fuel', 'water'] as const) {
      const markup = renderToStaticMarkup(
        <CommodityAnswer analysis={analysis} units="metric" commodity={commodity} />,
      );
      const longest = analysis[commodity].gaps[analysis[commodity].longest]!;
      expect(textOf(markup)).toContain(`${Math.round(longest.lengthKm)} km`);
      const short = analysis[commodity].gaps.filter((gap) => gap.verdict === 'short').length;
      const all = analysis[commodity].gaps.length;
      if (short > 0) expect(textOf(markup)).toContain(`${short} of ${all} stretches short`);
    }
  });

  it('shows every sentence of what to do', () => {
    const todo = [
      ['Carry ', { strong: '2 cans of ' }, { quantity: 20, unit: 'l' as const, as: 'much' as const }, '.'],
      ['Telephone first.'],
    ];
    const answered = { ...analysis, answer: { ...analysis.answer, todo } };
    const text = textOf(renderToStaticMarkup(<Todo analysis={answered} units="metric" />));
    expect(text).toContain('Carry 2 cans of 20 l.');
    expect(text).toContain('Telephone first.');
  });
});
