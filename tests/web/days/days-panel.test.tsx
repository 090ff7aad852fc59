import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import type { Day } from '../../../server/contract/pace.ts';
import { DaysPanel } from '../../../web/days/DaysPanel.tsx';
import { FormContext } from '../../../web/form/form-context.ts';
import { NO_FOCUS } from '../../../web/state/focus.ts';
import { Strip } from '../../../web/strip/Strip.tsx';
import type { UnitSystem } from '../../../web/units/units.ts';
import { sampleReply } from '../sample-reply.ts';

const ROWS: Day[] = [
  {
    day: 1,
    date: '2027-05-03',
    fromKm: 0,
    toKm: 245,
    hours: 7,
    halt: { kind: 'pace', name: null },
    arrive: { earliest: '2027-05-03T12:05', latest: '2027-05-03T15:00' },
    fuelL: 69,
    waterL: 52,
    waterByGrade: null,
  },
  {
    day: 2,
    date: '2027-05-04',
    fromKm: 245,
    toKm: 490,
    hours: 7,
    halt: { kind: 'camp', name: 'Dry Fork' },
    arrive: null,
    fuelL: -3,
    waterL: 34,
    waterByGrade: null,
  },
];

function shown(marked: readonly number[] = [], units: UnitSystem = 'metric') {
  const { analysis } = sampleReply();
  analysis.days = { ...analysis.days, rows: ROWS, allListed: false };
  analysis.trip = { ...analysis.trip, surfaces: [{ fromKm: 0, toKm: 300, surface: 'sand' }] };
  const said = { rig: analysis.rig, trip: analysis.trip };
  return renderToStaticMarkup(
    <FormContext.Provider value={{ analysis, said, units, problem: null, onEdit: () => {} }}>
      <DaysPanel marked={marked} onFocus={() => {}} />
    </FormContext.Provider>,
  )
    .replace(/<[^>]*>/g, ' ')
    .replace(/[\s\u00a0]+/g, ' ')
    .replaceAll('&#x27;', "'");
}

describe('the days', () => {
  it('are listed with date, place, hours, night and what is left, and what lacks with its sign', () => {
    const text = shown();
    expect(text).toContain('1 Mon 3 May 245 from 0 7 hours end 69 52');
    expect(text).toContain('2 Tue 4 May 490 from 245 7 Dry Fork camp −3 34');
    expect(shown([], 'us')).toContain('152 from 0');
  });

  it('say that more days follow than are listed, and by what water goes', () => {
    expect(shown()).toContain('more days than the 2 listed');
    expect(shown()).toContain('Water goes by the time that passes, nights included');
  });

  it('offer camps and surfaces only at places that were marked', () => {
    expect(shown()).not.toContain('Camp here');
    expect(shown([417.3])).toContain('Marked km 417: Camp here');
    expect(shown([417.3])).not.toContain('Mark the surface');
    expect(shown([417.3, 120])).toContain('km 120 to km 417:');
  });
});

describe('the strip', () => {
  it('draws a told surface along the road, and nothing where none is told', () => {
    const draw = (surfaces: NonNullable<ReturnType<typeof sampleReply>['analysis']['trip']['surfaces']>) => {
      const reply = sampleReply();
      reply.analysis.trip = { ...reply.analysis.trip, surfaces };
      const markup = renderToStaticMarkup(
        <Strip reply={reply} plan={null} units="metric" focus={NO_FOCUS} onFocus={() => {}} />,
      );
      // The key explains the line whether there is one or not.
      const [drawn = ''] = markup.split('<details class="strip-legend"');
      expect(drawn.length).toBeLessThan(markup.length);
      return drawn.match(/class="surface-line"/g)?.length ?? 0;
    };
    expect(draw([{ fromKm: 0, toKm: 300, surface: 'sand' }])).toBe(2);
    expect(draw([{ fromKm: 0, toKm: 300, surface: 'unknown' }])).toBe(0);
    expect(draw([])).toBe(0);
  });
});
