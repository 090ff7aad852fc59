import { renderToStaticMarkup } from 'react-dom/server';
import { Compile } from 'typebox/compile';
import { describe, expect, it } from 'vitest';
import { PlanReply } from '../../../server/contract/whatif.ts';
import { CarryPanel } from '../../../web/carry/CarryPanel.tsx';
import { carryWords } from '../../../web/carry/PlanWords.tsx';
import type { Planned } from '../../../web/plan/use-plan.ts';
import type { UnitSystem } from '../../../web/units.ts';
import { samplePlan } from '../sample-plan.ts';
import { sampleReply } from '../sample-reply.ts';

const held = (reply: PlanReply, more: Partial<Planned> = {}): Planned => ({
  reply,
  whole: true,
  stale: false,
  slow: false,
  problem: null,
  ...more,
});

function markupOf(planned: Planned, units: UnitSystem = 'metric'): string {
  const { analysis } = sampleReply();
  return renderToStaticMarkup(
    <CarryPanel
      {...{ planned, analysis, units }}
      said={{ rig: analysis.rig, trip: analysis.trip }}
      problem={null}
      onEdit={() => {}}
    />,
  );
}
const plain = (text: string) => text.replace(/[\s\u00a0]+/g, ' ');
const shown = (planned: Planned, units: UnitSystem = 'metric') =>
  plain(markupOf(planned, units).replace(/<[^>]*>/g, ' '))
    .replaceAll('&#x27;', "'")
    .replace(/ ([:.,;])/g, '$1');

describe('the carry plan', () => {
  it('is shown from what the server sends', () => {
    expect([...Compile(PlanReply).Errors(samplePlan())]).toEqual([]);
  });

  it('says what to leave with, what to take on where, and nothing of a stop that is passed by', () => {
    const text = shown(held(samplePlan()));
    expect(text).toContain('Fill at 1 stop, with 2 fuel cans and 0 water cans.');
    expect(text).toContain(
      'Low Harbour (km 0): leave with 100 l of diesel in the tanks; 70 l of water in the tanks.',
    );
    expect(text).toContain('Reed Cross (km 300): take on 100 l of diesel; leave with 2 cans full.');
    expect(text).not.toContain('Passed Well');
  });

  it('says what is let go for a permitted mass as such', () => {
    const reply = samplePlan();
    reply.plan.stops[0]!.passings[0]!.fillL = -12;
    expect(shown(held(reply))).toContain('let 12 l of diesel go, for the sake of a permitted mass');
  });

  it('carries cans over their stretch and says where each is poured, and how many arrive full', () => {
    const [carry] = samplePlan().plan.carries;
    expect(plain(carryWords(carry!, 'diesel', 'metric'))).toBe(
      '2 cans of diesel (40 l) full from Reed Cross (km 300) to High Cairn (km 1,200); pour them in at km 570, 640.',
    );
    expect(plain(carryWords({ ...carry!, pourAtKm: [570] }, 'diesel', 'metric'))).toMatch(
      /pour 1 of them in at km 570; 1 still full on arrival\.$/,
    );
    expect(plain(carryWords({ ...carry!, pourAtKm: [] }, 'diesel', 'metric'))).toMatch(
      /none is poured before\.$/,
    );
    expect(plain(carryWords({ ...carry!, cans: 1, pourAtKm: [570] }, 'diesel', 'us'))).toMatch(
      /pour it in at mile 354\.$/,
    );
  });

  it('says which aims are proven, by how much the others may be better, and what it rests on', () => {
    const text = shown(held(samplePlan()));
    expect(text).toContain('2 cans in all: none better exists');
    expect(text).toContain('full cans carried: 610 can-kilometres: not proven, up to 12.4 better may exist');
    expect(text).not.toContain('left out of the tanks');
    expect(text).toContain('km 300: Reed Cross is known only as implied.');
    expect(text).toContain('Heaviest at km 300: 3,080 kg. Most on the front axle 1,300 kg');
  });

  it('does not call the plan against one failure impossible before it was tried', () => {
    expect(shown(held(samplePlan(), { whole: false }))).toContain('Being reckoned…');
    const reply = samplePlan();
    reply.plan.oneFailure = {
      status: 'none',
      spendsReserve: true,
      cans: { fuel: 0, water: 0 },
      moreCans: { fuel: 0, water: 0 },
      moreKg: 0,
      moreDrivingKm: 0,
      proven: false,
      carries: [],
      legs: { fuel: [], water: [] },
      breaks: [],
      failures: [],
    };
    expect(shown(held(reply))).toContain('There is no such plan');
    reply.plan.oneFailure.status = 'out-of-time';
    expect(shown(held(reply))).toContain('whether there is such a plan is not known');
  });

  it('lists whom to telephone, and makes no link of what is no web address', () => {
    const markup = markupOf(held(samplePlan()));
    expect(plain(markup)).toContain('telephone +00 1234');
    expect(plain(markup)).toContain('hours Mo-Fr 08:00-16:00');
    expect(markup).not.toContain('href="javascript');
    const reply = samplePlan();
    reply.whatIf.callFirst[0]!.website = 'https://reed.example';
    expect(markupOf(held(reply))).toContain('href="https://reed.example"');
  });
});

describe('where there is no plan', () => {
  const without = () => {
    const reply = samplePlan();
    reply.plan = {
      ...reply.plan,
      status: 'none',
      breaks: [{ cause: 'fuel', from: null, to: null, missingL: 30, text: '30 l lack on the last stretch.' }],
      waysOut: [
        {
          kind: 'more-cans',
          telephoneFirst: false,
          text: 'With 2 more fuel cans there is a plan.',
          cans: { fuel: 6, water: 0 },
          amount: 2,
          unit: 'cans',
          atKm: null,
          id: null,
          commodity: 'fuel',
          moreKg: 43,
        },
        {
          kind: 'other-stop',
          telephoneFirst: true,
          text: 'If Far Pump has fuel there is a plan.',
          cans: { fuel: 4, water: 0 },
          amount: 4,
          unit: 'km',
          atKm: 700,
          id: 'node/9',
          commodity: 'fuel',
          moreKg: 0,
        },
      ],
      waysOutComplete: false,
    };
    return reply;
  };

  it('says what breaks it, the ways out, and apart from them what hangs on a call', () => {
    const text = shown(held(without()));
    expect(text).toContain('There is no plan that keeps the reserve. 30 l lack on the last stretch.');
    expect(text).not.toContain('Do this');
    expect(text).toMatch(
      /Ways out.*With 2 more fuel cans.*Not all were tried.*Only after a telephone call.*Far Pump/,
    );
  });

  it('does not say that no way out was found before all were tried', () => {
    const reply = without();
    reply.plan.waysOut = [];
    expect(shown(held(reply, { whole: false }))).toContain('Being tried…');
    expect(shown(held(reply, { whole: false }))).not.toContain('None was found');
    expect(shown(held(reply))).toContain('None was found');
  });

  it('does not take running out of time for there being none', () => {
    const reply = without();
    reply.plan.status = 'out-of-time';
    expect(shown(held(reply))).toContain('Whether there is one is not known.');
    expect(shown(held(reply))).not.toContain('There is no plan');
  });
});

describe('while it is made', () => {
  it('says that it is at work, and dims the plan before', () => {
    expect(shown({ reply: null, whole: false, stale: true, slow: true, problem: null })).toContain(
      'Working…',
    );
    const markup = markupOf(held(samplePlan(), { stale: true, slow: true }));
    expect(markup).toContain('plan plan-stale');
    expect(markup).toContain('Reed Cross');
  });
});
