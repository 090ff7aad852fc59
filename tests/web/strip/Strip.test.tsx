import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import type { AnalysisReply } from '../../../server/contract/answers/map.ts';
import type { PlanReply } from '../../../server/contract/whatif.ts';
import { type Focus, NO_FOCUS } from '../../../web/state/focus.ts';
import { Strip } from '../../../web/strip/Strip.tsx';
import type { UnitSystem } from '../../../web/units/units.ts';
import { drawnPlan } from '../drawn-plan.ts';
import { sampleReply } from '../sample-reply.ts';

function draw(
  focus: Partial<Focus> = {},
  reply: AnalysisReply = sampleReply(),
  units: UnitSystem = 'metric',
  plan: PlanReply | null = null,
) {
  const focused = { ...NO_FOCUS, ...focus };
  return renderToStaticMarkup(
    <Strip reply={reply} plan={plan} units={units} focus={focused} onFocus={() => {}} />,
  );
}

/** Text with its spaces plain. */
const plain = (markup: string): string => markup.replaceAll('\u00a0', ' ');

describe('the strip', () => {
  test('names the sides, the supplies and every verdict that is not enough in words', () => {
    const markup = plain(draw());
    for (const words of [
      'diesel',
      'drinking water',
      'Red Gate',
      'into the reserve',
      'short',
      'unknown',
      'no map data',
    ])
      expect(markup).toContain(words);
  });

  test('is a slider that says the place and what is left there in words', () => {
    const markup = plain(draw({ atKm: 550 }));
    expect(markup).toContain('role="slider"');
    expect(markup).toContain('aria-valuenow="550"');
    expect(markup).toContain(
      'aria-valuetext="km 550: diesel 39 L left; drinking water 7.1 L left, into the reserve"',
    );
  });

  test('says dry, and no map data, at such places', () => {
    expect(plain(draw({ atKm: 630 }))).toContain('drinking water 0 L left, dry');
    expect(plain(draw({ atKm: 1050 }))).toContain(', no map data"');
  });

  test('shows a reading only while a place is pointed at', () => {
    expect(draw()).not.toContain('strip-readout');
    expect(draw({ atKm: 300 })).toContain('strip-readout');
  });

  test('frames the chosen gap, once', () => {
    expect(draw()).not.toContain('strip-chosen');
    expect(draw({ gap: { commodity: 'water', index: 2 } }).match(/strip-chosen/g)).toHaveLength(1);
  });

  test('hatches each dry stretch, stripes each reserve, dots each stretch without cover', () => {
    const markup = draw();
    expect(markup.match(/class="strip-dry"/g)).toHaveLength(1);
    expect(markup.match(/class="strip-into-reserve"/g)).toHaveLength(3);
    expect(markup.match(/class="strip-no-cover"/g)).toHaveLength(1);
  });

  test('draws the hollow mark of a point that does not count', () => {
    expect(draw()).toMatch(/<g class="strip-uncounted"><circle/);
  });

  test('shows miles and gallons when asked', () => {
    const markup = plain(draw({ atKm: 160.9344 }, sampleReply(), 'us'));
    expect(markup).toContain('mile 100');
    expect(markup).toContain('gal');
    expect(markup).not.toContain(' km');
  });

  test('draws a route of two kilometres and one without any gap', () => {
    const tiny = sampleReply();
    tiny.analysis.route.lengthKm = 2;
    for (const report of [tiny.analysis.fuel, tiny.analysis.water]) {
      report.gaps = [];
      report.cover = [];
    }
    expect(draw({ atKm: 1 }, tiny)).not.toMatch(/NaN|Infinity|undefined/);
  });

  test('has no figure that is not a number', () => {
    expect(draw({ atKm: 412, gap: { commodity: 'fuel', index: 1 } })).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe('the strip with a plan', () => {
  const withPlan = (focus: Partial<Focus> = {}, units: UnitSystem = 'metric') =>
    plain(draw(focus, sampleReply(), units, drawnPlan()));

  test('says that it goes by the plan, and how many cans come with the tanks', () => {
    const markup = withPlan();
    expect(markup).toContain('by the plan');
    expect(markup).toContain('tanks 127 L + 2 cans');
    expect(draw()).not.toMatch(/by the plan|strip-can|strip-used|strip-capacity/);
  });

  test('draws a band for each can, a dot for each pour, a line where the tanks are full', () => {
    const markup = withPlan();
    expect(markup.match(/class="strip-can"/g)).toHaveLength(2);
    expect(markup.match(/class="strip-capacity"/g)).toHaveLength(2);
    expect(markup.match(/<g class="strip-can-bar">.*?<\/g>/)?.[0].match(/<circle/g)).toHaveLength(2);
    expect(markup).toContain('>2 cans</text>');
  });

  test('has no stretch that is short, in reserve or dry, but is veiled where there is no map data', () => {
    const markup = withPlan();
    expect(markup).not.toMatch(/strip-dry|strip-into-reserve|strip-verdict-short/);
    expect(markup.match(/class="strip-no-cover"/g)).toHaveLength(1);
  });

  test('tells stops that are used from those passed by, and the first turn-back point from later ones', () => {
    const markup = withPlan();
    expect(markup.match(/class="strip-used"/g)).toHaveLength(1);
    expect(markup.match(/class="strip-passed"/g)).toHaveLength(1);
    expect(markup.match(/<polygon[^>]*>/g)?.map((mark) => mark.includes('strip-later'))).toEqual([
      false,
      true,
    ]);
  });

  test('reads out tanks, cans and the grades of water, in the units asked for', () => {
    for (const words of ['130 L', 'tanks 90 L', '2 cans full', 'drinkable 37 L', 'washing 16 L'])
      expect(withPlan({ atKm: 435 })).toContain(`>${words}</text>`);
    const us = withPlan({ atKm: 435 }, 'us');
    expect(us).toContain('>tanks 24 gal</text>');
    expect(us).not.toMatch(/ l<| km /);
  });

  test('frames the gap that is chosen, though it draws legs', () => {
    expect(withPlan({ gap: { commodity: 'water', index: 2 } }).match(/strip-chosen/g)).toHaveLength(1);
    expect(withPlan({ gap: { commodity: 'water', index: 2 } })).not.toMatch(/NaN|Infinity|undefined/);
  });
});
