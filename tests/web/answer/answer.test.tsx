import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { CommodityAnswer, Todo } from '../../../web/answer/Answer.tsx';
import { type PlanStanding, standingOf } from '../../../web/answer/PlanTodo.tsx';
import { atPlaces, placeWords } from '../../../web/words/plan-words.ts';
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
    expect(textOf(sentenceText(sentence, 'metric'))).toBe('Runs dry at km 825: 9 L in 3 days.');
    expect(textOf(sentenceText(sentence, 'us'))).toBe('Runs dry at mile 513: 2.4 gal in 3 days.');
  });

  const told = (answered: typeof analysis, plan: ReturnType<typeof samplePlan> | null = null) =>
    (['fuel', 'water'] as const).map((commodity) =>
      textOf(
        renderToStaticMarkup(
          <CommodityAnswer analysis={answered} units="metric" plan={plan} commodity={commodity} />,
        ),
      ),
    );

  it('names the verdict of the worst stretch first, then how many share it, and the longest', () => {
    const rated = structuredClone(analysis);
    for (const commodity of ['fuel', 'water'] as const) {
      Object.assign(rated[commodity].gaps[1]!, { verdict: 'short', runsDryKm: 512, extraL: 9 });
    }
    const shown = told(rated);
    for (const [at, commodity] of (['fuel', 'water'] as const).entries()) {
      const { gaps, longest } = rated[commodity];
      const short = gaps.filter((gap) => gap.verdict === 'short');
      expect(short.length).toBeGreaterThan(0);
      const [worst] = short.toSorted((a, b) => a.marginL - b.marginL);
      expect(shown[at]).toContain(`Runs dry at km ${Math.round(worst!.runsDryKm!).toLocaleString('en-GB')}`);
      expect(shown[at]).toContain(
        `${short.length} of ${gaps.length} stretches run${short.length === 1 ? 's' : ''} dry.`,
      );
      expect(shown[at]).toContain(`Longest stretch ${Math.round(gaps[longest]!.lengthKm)} km`);
    }
  });

  it('gives way to the plan where that keeps the reserve, and says what is without it', () => {
    const plan = samplePlan();
    for (const leg of [...plan.plan.legs.fuel, ...plan.plan.legs.water]) leg.verdict = 'enough';
    for (const text of told(analysis, plan)) {
      expect(text).toContain('Holds with the plan');
      expect(text).toMatch(
        /Without it (runs dry|into the reserve) at km [\d,]+|Without it not known from km/,
      );
    }
    plan.plan.legs.fuel[0]!.verdict = 'unknown';
    const [fuel] = told(analysis, plan);
    expect(fuel).toContain('Not known from');
    expect(fuel).not.toContain('Holds');
    plan.plan.status = 'none';
    expect(told(analysis, plan)[1]).not.toContain('Holds');
  });

  it('says what is asked where nothing is open but the way past the end, and that of no other doubt', () => {
    const open = (of: 'onward' | 'bridge') => {
      const changed = structuredClone(analysis);
      for (const gap of changed.fuel.gaps)
        Object.assign(gap, { verdict: 'enough', doubt: null, acrossNoData: false });
      const doubt = { of, fromKm: 1190, toKm: 1200, leavesUnknown: true };
      Object.assign(changed.fuel.gaps.at(-1)!, { verdict: 'unknown', doubt });
      return changed;
    };
    const plan = samplePlan();
    const [leg] = plan.plan.legs.fuel.slice(-1);
    Object.assign(leg!, { verdict: 'unknown', acrossNoData: false, to: { ...leg!.to, kind: 'end' } });
    for (const made of [null, plan]) {
      expect(told(open('onward'), made)[0]).toContain('Not known past the end');
      expect(told(open('onward'), made)[0]).toContain('Say how far it is from the end');
      expect(told(open('bridge'), made)[0]).toMatch(/Not known from km/);
    }
    Object.assign(leg!, { acrossNoData: true });
    expect(told(open('onward'), plan)[0]).toMatch(/Not known from km/);
  });

  it('is not calm about a leg of the plan that nobody knows, where every stretch by itself is enough', () => {
    const calm = structuredClone(analysis);
    for (const gap of calm.fuel.gaps) Object.assign(gap, { verdict: 'enough', doubt: null });
    expect(told(calm)[0]).toContain('Enough all the way');
    const plan = samplePlan();
    plan.plan.legs.fuel[0]!.verdict = 'unknown';
    expect(told(calm, plan)[0]).toMatch(/Not known from km [\d,]+, by the plan/);
    const { from, to } = plan.plan.legs.fuel[0]!;
    expect(told(calm, plan)[0]).toContain(placeWords(from, 'metric').replaceAll('\u00a0', ' '));
    expect(told(calm, plan)[0]).toContain(placeWords(to, 'metric').replaceAll('\u00a0', ' '));
  });

  it('sends for map data where a plan stands on none', () => {
    const text = textOf(
      renderToStaticMarkup(
        <Todo
          analysis={{ ...analysis, noData: ['water'] }}
          units="metric"
          plan={samplePlan()}
          coming={false}
          standing="made"
        />,
      ),
    );
    expect(text).toContain('No map data tells of drinking water: get an extract that does');
    expect(text).not.toContain('No map data tells of diesel');
  });

  it('is never calm about a closed route, nor about what no map tells of', () => {
    const plan = samplePlan();
    const caution = { code: 'route-closed', text: 'Closed.', fromKm: 12, toKm: 20 };
    for (const text of told({ ...analysis, cautions: [...analysis.cautions, caution] }, plan)) {
      expect(text).toContain('Route closed at km 12');
      expect(text).not.toContain('Holds');
    }
    const [fuel] = told({ ...analysis, noData: ['fuel'] }, plan);
    expect(fuel).toContain('Not on the map');
    expect(fuel).not.toContain('Longest');
  });

  it('shows every sentence of what to do', () => {
    const todo = [
      ['Carry ', { strong: '2 cans of ' }, { quantity: 20, unit: 'l' as const, as: 'much' as const }, '.'],
      ['Telephone first.'],
    ];
    const answered = { ...analysis, answer: { ...analysis.answer, todo } };
    const text = textOf(
      renderToStaticMarkup(
        <Todo analysis={answered} units="metric" plan={null} coming={false} standing="made" />,
      ),
    );
    expect(text).toContain('Carry 2 cans of 20 L.');
    expect(text).toContain('Telephone first.');
  });

  it('says what to do by the carry plan where one is found, and only there', () => {
    const plan = samplePlan();
    plan.plan.getCans = { fuel: 1, water: 0 };
    plan.plan.carries = [300, 700, 900].map((fromKm) => ({ ...plan.plan.carries[0]!, fromKm }));
    const shown = (units: 'metric' | 'us') =>
      textOf(
        renderToStaticMarkup(
          <Todo analysis={analysis} units={units} plan={plan} coming={false} standing="made" />,
        ),
      );
    const text = shown('metric');
    expect(text).toContain('by the plan');
    expect(text).toContain('Get 1 more fuel can.');
    expect(text).toContain('2 cans from Reed Cross (km 300) to High Cairn (km 1,200)');
    expect(text).toContain('and on 2 more stretches.');
    expect(text).toContain('Drinking water: no can need be full.');
    expect(text).toContain('Telephone Reed Cross before you leave: most hangs on it.');
    expect(shown('us')).toContain('(mile 186)');
    expect(text).not.toContain('Not all of it is known');
    plan.plan.legs.fuel[0]!.verdict = 'unknown';
    expect(shown('metric')).toContain('Not all of it is known');
    plan.plan.status = 'found';
    const standing = (each: PlanStanding) =>
      textOf(
        renderToStaticMarkup(
          <Todo analysis={analysis} units="metric" plan={plan} coming={false} standing={each} />,
        ),
      );
    expect(standing('searching')).toContain('a better one is still searched for');
    expect(standing('changed')).toContain('The plan has changed.');
    expect(standing('unproven')).toContain('not proven to be the best');
    const how = { searching: true, stopped: false, outcome: null };
    expect(standingOf(how)).toBe('searching');
    expect(standingOf({ ...how, stopped: true })).toBe('unproven');
    expect(standingOf({ ...how, searching: false, outcome: 'changed' })).toBe('changed');
    expect(standingOf({ ...how, searching: false, outcome: 'confirmed' })).toBe('made');
    plan.plan.status = 'none';
    expect(shown('metric')).not.toContain('by the plan');
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
