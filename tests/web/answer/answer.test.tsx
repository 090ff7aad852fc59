import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { CommodityAnswer, Todo } from '../../../web/answer/Answer.tsx';
import { atPlaces } from '../../../web/words/plan-words.ts';
import { sentenceText } from '../../../web/words/sentence.ts';
import { samplePlan } from '../sample-plan.ts';
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
    const text = textOf(renderToStaticMarkup(<Todo analysis={answered} units="metric" plan={null} />));
    expect(text).toContain('Carry 2 cans of 20 l.');
    expect(text).toContain('Telephone first.');
  });

  it('says what to do by the carry plan where one is found, and only there', () => {
    const plan = samplePlan();
    plan.plan.getCans = { fuel: 1, water: 0 };
    plan.plan.carries = [300, 700, 900].map((fromKm) => ({ ...plan.plan.carries[0]!, fromKm }));
    const shown = (units: 'metric' | 'us') =>
      textOf(renderToStaticMarkup(<Todo analysis={analysis} units={units} plan={plan} />));
    const text = shown('metric');
    expect(text).toContain('by the carry plan');
    expect(text).toContain('Get 1 more fuel can.');
    expect(text).toContain('2 cans from Reed Cross (km 300) to High Cairn (km 1,200)');
    expect(text).toContain('and on 1 more stretch.');
    expect(text).toContain('Drinking water: no can need be full.');
    expect(text).toContain('Telephone Reed Cross before you leave: most hangs on it.');
    expect(shown('us')).toContain('(mile 186)');
    expect(text).not.toContain('Not all of it is known');
    plan.plan.legs.fuel[0]!.verdict = 'unknown';
    expect(shown('metric')).toContain('Not all of it is known');
    plan.plan.status = 'none';
    expect(shown('metric')).not.toContain('by the carry plan');
    expect(shown('metric')).toContain('No carry plan keeps the reserve as things stand');
    plan.plan.status = 'out-of-time';
    expect(shown('metric')).not.toContain('No carry plan');
  });
});

describe('places in one breath', () => {
  it('names a place once, with how often', () => {
    expect(textOf(atPlaces([971, 1046, 1046.2, 1128.5], 'metric'))).toBe('km 971, 1,046 (2), 1,129');
    expect(atPlaces([], 'metric')).toBe('');
  });
});
