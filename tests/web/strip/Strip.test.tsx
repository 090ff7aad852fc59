import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import type { AnalysisReply } from '../../../server/contract/answers/map.ts';
import type { PlanReply } from '../../../server/contract/whatif.ts';
import { type Focus, NO_FOCUS } from '../../../web/state/focus.ts';
import { Strip } from '../../../web/strip/Strip.tsx';
import { STRIP_MARKS } from '../../../web/strip/StripLegend.tsx';
import type { UnitSystem } from '../../../web/units/units.ts';
import { drawnPlan } from '../drawn-plan.ts';
import { sampleReply } from '../sample-reply.ts';

/** The strip as it is drawn, and what stands beneath it. */
function drawAll(
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

/** The strip without the buttons and the legend beneath it. */
const draw = (...all: Parameters<typeof drawAll>): string =>
  drawAll(...all).split('<div class="strip-tools"')[0]!;

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

describe('the legend of the strip', () => {
  /** Classes of marks that need no words: the road, figures, names, what only frames or carries others. */
  const PLAIN =
    /^strip-(frame|nearer|heads?|half|fuel|water|road|road-bed|tick|figure|name|detail|labels?|leader|verdict.*|stops|turn-text|veil|crowded|faint.*|later|tools|legend|dot|dry-ground|cross)$/;

  /** Everything there is to draw at once. */
  function all(): string {
    const reply = sampleReply();
    reply.analysis.trip.closed = [{ fromKm: 100, toKm: 200, on: '2026-05-01' }];
    reply.analysis.trip.surfaces = [{ fromKm: 300, toKm: 400, surface: 'gravel' }];
    reply.analysis.nights = [{ ...reply.analysis.nights[0]!, atKm: 350 }];
    const focus = { gap: { commodity: 'water' as const, index: 2 } };
    return drawAll(focus, reply) + drawAll(focus, reply, 'metric', drawnPlan());
  }

  test('has words for every mark that is drawn, and none for one that never is', () => {
    const drawn = all()
      .split('<details class="strip-legend"')
      .map((part, i) => (i === 0 ? part : part.slice(part.indexOf('</details>'))))
      .join('');
    const classes = [...drawn.matchAll(/class="([^"]+)"/g)].flatMap(([, names]) => names!.split(' '));
    const marks = new Set(classes.filter((name) => /^(strip-|surface-line)/.test(name) && !PLAIN.test(name)));
    expect([...marks].sort()).toEqual(Object.keys(STRIP_MARKS).sort());
  });

  test('tells of a plan only where one is drawn', () => {
    expect(drawAll()).not.toContain('the plan fills here');
    expect(drawAll({}, sampleReply(), 'metric', drawnPlan())).toContain('the plan fills here');
  });
});

describe('the strip brought near', () => {
  const near = (fromKm: number, toKm: number) => plain(draw({ onShow: { fromKm, toKm, by: 'strip' } }));

  test('has round figures of that stretch, and marks of nothing beyond it', () => {
    const markup = near(300, 340);
    const figures = [...markup.matchAll(/class="strip-figure"[^>]*>([^<]+)</g)].map(([, figure]) => figure);
    expect(figures).toContain('320');
    expect(figures.map(Number).every((km) => km >= 300 && km <= 340)).toBe(true);
    expect(markup).not.toContain('Red Gate');
    expect(near(600, 660)).toContain('Red Gate');
  });

  test('reads out a place only while it is on it', () => {
    const at = (atKm: number) => draw({ atKm, onShow: { fromKm: 300, toKm: 340, by: 'map' } });
    expect(at(320)).toContain('strip-readout');
    expect(at(500)).not.toContain('strip-readout');
  });

  test('draws 300 stops along 3,000 km with few names, none over another, and no figure that is none', () => {
    const reply = sampleReply();
    const [gap] = reply.analysis.fuel.gaps;
    reply.analysis.route.lengthKm = 3000;
    reply.analysis.fuel.gaps = Array.from({ length: 300 }, (_, i) => ({
      ...gap!,
      verdict: 'enough' as const,
      from: { ...gap!.from, atKm: i * 10 },
      to: { ...gap!.to, atKm: i * 10 + 10, id: `node/${i}`, name: `Stop ${i}` },
      lengthKm: 10,
      levels: [],
    }));
    const markup = draw({}, reply);
    expect(markup).not.toMatch(/NaN|Infinity|undefined/);
    expect((markup.match(/>Stop /g) ?? []).length).toBeLessThan(8);
    // Brought near, each has its name.
    const closer = draw({ onShow: { fromKm: 1000, toKm: 1100, by: 'strip' } }, reply);
    for (let stop = 100; stop < 110; stop += 1) expect(closer).toContain(`>Stop ${stop}<`);
  });
});
