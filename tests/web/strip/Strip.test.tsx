import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import type { AnalysisReply } from '../../../server/contract/map.ts';
import { type Focus, NO_FOCUS } from '../../../web/focus.ts';
import { Strip } from '../../../web/strip/Strip.tsx';
import type { UnitSystem } from '../../../web/units.ts';
import { sampleReply } from '../sample-reply.ts';

function draw(
  focus: Partial<Focus> = {},
  reply: AnalysisReply = sampleReply(),
  units: UnitSystem = 'metric',
) {
  const focused = { ...NO_FOCUS, ...focus };
  return renderToStaticMarkup(<Strip reply={reply} units={units} focus={focused} onFocus={() => {}} />);
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
      'into reserve',
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
      'aria-valuetext="km 550: diesel 39 l left; drinking water 7.1 l left, into the reserve"',
    );
  });

  test('says dry, and no map data, at such places', () => {
    expect(plain(draw({ atKm: 630 }))).toContain('drinking water 0 l left, dry');
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
