import fc from 'fast-check';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { WHAT_IF_DEFAULTS } from '../../../server/core/plan/what-if/what-if.ts';
import { figure, placeAt } from '../../../server/words/parts/figures.ts';
import { parts } from '../../../server/words/parts/part.ts';
import { FormContext, type FormState } from '../../../web/form/form-context.ts';
import { type UnitSystem, volumeIn } from '../../../web/units/units.ts';
import { figureAboard, figureAtLeast } from '../../../web/whatif/gauge-figures.ts';
import { WhatIfDetails } from '../../../web/whatif/WhatIfDetails.tsx';
import { WhatIfPanel } from '../../../web/whatif/WhatIfPanel.tsx';
import { formOf, held, textOf } from '../planned.ts';
import { samplePlan } from '../sample-plan.ts';
import { told } from '../told.ts';

function shown(
  change: (reply: ReturnType<typeof samplePlan>) => void = () => {},
  form = formOf('metric'),
): string {
  const reply = samplePlan();
  change(reply);
  return textOf(markupOf(reply, form));
}

const markupOf = (reply: ReturnType<typeof samplePlan>, form: FormState) =>
  renderToStaticMarkup(
    <FormContext.Provider value={form}>
      <WhatIfPanel planned={held(reply)} onFocus={() => {}} />
    </FormContext.Provider>,
  );

describe('the what-ifs', () => {
  it('say what happens, where it ends, what is left and what would have covered it', () => {
    expect(shown()).toMatch(
      /Reed Cross gives no fuel: on from there with what is aboard\. diesel, km 300 −20 ends at km 120 runs dry \+2 cans/,
    );
    expect(shown()).toMatch(/Waiting 2 days \(repair, weather, a river\)\. water, km 800 15 enough/);
  });

  it('open to the way that is better then, and what lacks on it', () => {
    const [row] = samplePlan().whatIf.rows;
    const text = textOf(renderToStaticMarkup(<WhatIfDetails row={row!} units="metric" />));
    expect(text).toContain('Best then back to Low Harbour (km 0)');
    expect(text).toContain('There with nothing: 20 L lack');
    expect(text).toContain('Would have kept the reserve 40 L more, 2 cans');
    expect(text).not.toContain('Gone by it');
  });

  it('say by what they go: the plan, or the gaps where there is none', () => {
    expect(shown()).toContain('All of it goes by the carry plan.');
    expect(
      shown((reply) => {
        reply.whatIf.basis = 'gaps';
      }),
    ).toContain('There is no plan: all of it goes by full tanks');
  });

  it('show which assumption does what to the least margin, and where to turn back', () => {
    expect(shown()).toContain('10 % more use fuel 8 to −3.2 −11');
    expect(shown()).toContain(
      'Before km 812 you can still go back to Reed Cross (km 300) with the reserve of diesel.',
    );
  });
});

describe('what is tried', () => {
  const chosen = (units: UnitSystem) => {
    const form = formOf(units, ({ said }) => {
      said.trip = { ...said.trip, whatIf: { waitDays: 3, hotterByC: 10, turnRoundAtKm: 500 } };
    });
    const markup = markupOf(samplePlan(), form);
    return [...markup.matchAll(/<input[^>]* value="([^"]*)"/g)].map(([, value]) => value);
  };

  it('stands in fields, in the units of the reader: a difference of degrees is no temperature', () => {
    expect(chosen('metric')).toEqual(['3', '10', '500']);
    expect(chosen('us')).toEqual(['3', '18', '310.7']);
  });

  it('names what holds where nothing is chosen', () => {
    const { waitDays, hotterByC } = WHAT_IF_DEFAULTS;
    expect(shown()).toContain(`empty: ${waitDays} days`);
    expect(shown()).toContain(`empty: ${hotterByC} °C, or ${hotterByC * 1.8} °F`);
  });
});

describe('sentences of the server', () => {
  it('are in the units of the reader', () => {
    const text = shown((reply) => {
      const rate = figure(14, 'l/100 km');
      Object.assign(reply.whatIf.rows[0]!, told(parts`Low use of fuel all the way (${rate}).`));
      Object.assign(reply.whatIf.matters[0]!, {
        step: '10 l more',
        stepParts: parts`${figure(10, 'l')} more`,
      });
      const turning = told(parts`Turning round at ${placeAt(999_000)} is not on the route.`);
      reply.whatIf.cautions = [{ code: 'x', ...turning }];
    }, formOf('us'));
    expect(text).toContain('all the way (16.8 mi/gal).');
    expect(text).toContain('2.6 gal more');
    expect(text).toContain('Turning round at mile 621 is');
  });
});

describe('the gauge', () => {
  it('stands for each place with what it takes on and back, and says where less is aboard', () => {
    expect(shown()).toContain('300 from Reed Cross, fuel filled 132 21 52 none');
    expect(shown()).toContain('850 64 89 aboard 71 31 none');
  });

  it('never shows less than is needed nor more than is aboard', () => {
    const number = (text: string) => Number(text.replaceAll(',', '').replace('\u2212', '-'));
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 3000, noNaN: true }),
        fc.constantFrom('metric' as const, 'us' as const, 'imperial' as const),
        (litres, units) => {
          const exact = volumeIn(litres, units);
          const step = units === 'metric' ? 1 : 0.1;
          const least = number(figureAtLeast(litres, units));
          const aboard = number(figureAboard(litres, units));
          expect(least).toBeGreaterThanOrEqual(exact - 1e-5);
          expect(least).toBeLessThan(exact + step + 1e-5);
          expect(aboard).toBeLessThanOrEqual(exact + 1e-5);
          expect(aboard).toBeGreaterThan(exact - step - 1e-5);
        },
      ),
    );
  });

  it('takes noise of the reckoning for nothing', () => {
    expect(figureAtLeast(40.0000000001, 'metric')).toBe('40');
    expect(figureAboard(39.9999999999, 'metric')).toBe('40');
    expect(figureAtLeast(40.01, 'metric')).toBe('41');
  });
});
