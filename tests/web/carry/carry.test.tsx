import { renderToStaticMarkup } from 'react-dom/server';
import { Compile } from 'typebox/compile';
import { describe, expect, it } from 'vitest';
import type { Passing } from '../../../server/contract/analysis.ts';
import type { WayOut } from '../../../server/contract/plan.ts';
import { PlanReply } from '../../../server/contract/whatif.ts';
import { figure, placeAt } from '../../../server/words/parts/figures.ts';
import { parts } from '../../../server/words/parts/part.ts';
import { CarryPanel } from '../../../web/carry/CarryPanel.tsx';
import { carryWords } from '../../../web/carry/PlanWords.tsx';
import { FormContext } from '../../../web/form/form-context.ts';
import type { Planned } from '../../../web/state/use-plan.ts';
import { formOf, held, textOf } from '../planned.ts';
import { samplePlan } from '../sample-plan.ts';
import { told } from '../told.ts';

function markupOf(planned: Planned, form = formOf('metric')): string {
  return renderToStaticMarkup(
    <FormContext.Provider value={form}>
      <CarryPanel id="demo" planned={planned} onFocus={() => {}} />
    </FormContext.Provider>,
  );
}
const plain = (text: string) => text.replace(/[\s\u00a0]+/g, ' ');
const shown = (planned: Planned, form = formOf('metric')) => textOf(markupOf(planned, form));

/** One that is reckoned, and one that hangs on a call. */
const waysOut = (): WayOut[] => [
  {
    kind: 'more-cans',
    telephoneFirst: false,
    ...told(parts`With 2 more fuel cans there is a plan: ${figure(43, 'kg')} more.`),
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
    ...told(parts`If Far Pump (${placeAt(700_000)}) has fuel there is a plan.`),
    cans: { fuel: 4, water: 0 },
    amount: 4,
    unit: 'km',
    atKm: 700,
    id: 'node/9',
    commodity: 'fuel',
    moreKg: 0,
  },
];

describe('the carry plan', () => {
  it('is shown from what the server sends', () => {
    expect([...Compile(PlanReply).Errors(samplePlan())]).toEqual([]);
  });

  it('tells what weakens or advises of the supplies that it uses', () => {
    const reply = samplePlan();
    const [used] = reply.plan.stops.flatMap((stop) => stop.passings.filter((passing) => passing.used));
    if (used === undefined) throw new Error('the sample uses no stop');
    const form = formOf('metric');
    const [like] = form.analysis.passings;
    if (like === undefined) throw new Error('the sample has no passing');
    const { id, commodity, atKm } = used;
    const reasons = [{ code: 'seasonal', ...told(parts`ask whether the pump runs`) }] as Passing['reasons'];
    const passings = [...form.analysis.passings, { ...like, id, commodity, atKm, reasons }];
    const text = shown(held(reply), { ...form, analysis: { ...form.analysis, passings } });
    expect(plain(text)).toContain('What to know of the supplies');
    expect(plain(text)).toContain('ask whether the pump runs');
  });

  it('says what to leave with, what to take on where, and nothing of a stop that is passed by', () => {
    const text = shown(held(samplePlan()));
    expect(text).toContain('Fill at 1 stop, with 2 fuel cans and 0 water cans.');
    expect(text).toContain(
      'Low Harbour (km 0): leave with 100 L of diesel in the tanks; 70 L of water in the tanks.',
    );
    expect(text).toContain('Reed Cross (km 300): take on 100 L of diesel; leave with 2 cans full.');
    expect(text.indexOf('Passed Well')).toBeGreaterThan(text.indexOf('Stops of the plan'));
  });

  it('says what is let go for a permitted mass as such', () => {
    const reply = samplePlan();
    reply.plan.stops[0]!.passings[0]!.fillL = -12;
    expect(shown(held(reply))).toContain('let 12 L of diesel go, for the sake of a permitted mass');
  });

  it('carries cans over their stretch and says where each is poured, and how many arrive full', () => {
    const [carry] = samplePlan().plan.carries;
    expect(plain(carryWords(carry!, 'diesel', 'metric'))).toBe(
      '2 cans of diesel (40 L) full from Reed Cross (km 300) to High Cairn (km 1,200); pour them in at km 570, 640.',
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
    expect(text).toContain('2 cans beyond those owned: none better exists');
    expect(text).toContain('full cans carried: 610 can-kilometres: not proven, up to 12.4 better may exist');
    expect(text).not.toContain('left out of the tanks');
    expect(text).toContain('km 300: Reed Cross is known only as implied.');
    expect(text).toContain('Heaviest at km 300: 3,080 kg. Most on the front axle 1,300 kg');
  });

  it('does not call the plan against one failure impossible before it was tried', () => {
    expect(shown(held(samplePlan(), { whole: false }))).toContain('Being reckoned…');
    const stopped = shown(held(samplePlan(), { whole: false, stopped: true }));
    expect(stopped).not.toContain('Being reckoned…');
    expect(stopped).toContain('Not reckoned.');
    const reply = samplePlan();
    reply.plan.oneFailure = {
      status: 'none',
      spendsReserve: true,
      cans: { fuel: 0, water: 0 },
      moreCans: { fuel: 0, water: 0 },
      moreKg: 0,
      moreDrivingKm: 0,
      proven: false,
      sheet: [],
      totals: null,
      carries: [],
      legs: { fuel: [], water: [] },
      nights: [],
      breaks: [],
      failures: [],
    };
    expect(shown(held(reply))).toContain('There is no such plan');
    const at = reply.plan.legs.fuel[0]!.to;
    reply.plan.oneFailure.breaks = [
      { at, ...told(parts`Every plan hangs on Reed Cross (${placeAt(300_000)}).`) },
    ];
    expect(shown(held(reply), formOf('us'))).toContain('Every plan hangs on Reed Cross (mile 186).');
    reply.plan.oneFailure.status = 'out-of-time';
    expect(shown(held(reply))).toContain('whether there is such a plan is not known');
    Object.assign(reply.plan.oneFailure, {
      status: 'found',
      moreCans: { fuel: 6, water: -1 },
      moreKg: 100,
      moreDrivingKm: -0.2,
    });
    expect(shown(held(reply))).toContain(
      'It takes 6 more fuel cans and 1 fewer water can than the plan above, 100 kg more when full and 0.2 km less off the route',
    );
  });

  it('says where the reserve is kept only as far as is known', () => {
    const reply = samplePlan();
    expect(shown(held(reply))).not.toContain('as far as is known');
    reply.plan.legs.fuel[0]!.verdict = 'unknown';
    expect(shown(held(reply))).toContain('as far as is known: read what it rests on');
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

describe('cans that are to be got', () => {
  const toGet = () => {
    const reply = samplePlan();
    reply.plan.getCans = { fuel: 2, water: 1 };
    return reply;
  };
  const owning = formOf('metric', ({ analysis }) => {
    analysis.rig.fuel.cans = { litres: 20, owned: 4 };
    analysis.rig.water.cans = { litres: 20, owned: 0 };
  });

  it('are said before all else, with how many are owned', () => {
    expect(shown(held(toGet()), owning)).toMatch(
      /^ ?Get 2 more fuel cans \(4 owned\) and 1 more water can \(none owned\)\. .*Fill at 1 stop/,
    );
    expect(shown(held(samplePlan()), owning)).not.toContain('Get ');
  });

  it('are followed by the ways out without them', () => {
    const reply = toGet();
    reply.plan.waysOut = waysOut();
    expect(shown(held(reply), owning)).toMatch(
      /Do this.*Or without more cans.*Only after a telephone call.*What it rests on/,
    );
    expect(shown(held(reply, { whole: false }), owning)).toContain('Being tried…');
    expect(shown(held(samplePlan()), owning)).not.toContain('Or without more cans');
  });
});

describe('the stops of the plan', () => {
  it('are listed, used or passed by, with what they arrive with, fill and leave with', () => {
    expect(shown(held(samplePlan()))).toMatch(
      /Reed Cross km 300, diesel, used 40 100 2 .*Passed Well km 500, water, passed by/,
    );
  });

  it('say how long they keep one waiting and how much is to be had', () => {
    const reply = samplePlan();
    Object.assign(reply.plan.stops[0]!.passings[0]!, { mostL: 120, waitHours: 1.5, fillHours: 0.5 });
    expect(shown(held(reply))).toContain('used 40 100 of 120 L 2 2 0.5 filling');
  });

  it('have those of which something is told, even where the plan has none', () => {
    const form = formOf('metric', ({ said }) => {
      said.trip = { ...said.trip, plan: { passBy: ['node/2', 'node/99'] } };
    });
    expect(shown(held(samplePlan()), form)).toContain('Passed Well km 500, water, passed by as told');
    expect(shown(held(samplePlan()), form)).toContain('node/99 not on this route');
    const reply = samplePlan();
    reply.plan = { ...reply.plan, status: 'none', stops: [] };
    expect(shown(held(reply), form)).toContain('node/99');
  });

  it('are those that count where there is no plan, used or passed by none', () => {
    const reply = samplePlan();
    reply.plan = { ...reply.plan, status: 'out-of-time', stops: [] };
    const form = formOf('metric');
    const [{ name, atKm }] = form.analysis.passings.filter(({ counts }) => counts) as [Passing];
    const text = shown(held(reply), form);
    expect(text).toContain('Stops that count');
    expect(text).toMatch(new RegExp(`${name} km ${atKm}, (diesel|water) `));
    expect(text).not.toMatch(/passed by|, used/);
    for (const each of form.analysis.passings.filter(({ counts }) => !counts)) {
      expect(text).not.toContain(`${each.name} km`);
    }
  });
});

describe('where there is no plan', () => {
  const without = () => {
    const reply = samplePlan();
    reply.plan = {
      ...reply.plan,
      status: 'none',
      breaks: [
        {
          cause: 'fuel',
          from: null,
          to: null,
          missingL: 30,
          ...told(parts`${figure(30, 'l')} lack on the last stretch.`),
        },
      ],
      waysOut: waysOut(),
      waysOutComplete: false,
    };
    return reply;
  };

  it('says what breaks it, the ways out, and apart from them what hangs on a call', () => {
    const text = shown(held(without()));
    expect(text).toContain('There is no plan that keeps the reserve. 30 L lack on the last stretch.');
    expect(text).not.toContain('Do this');
    expect(text).toMatch(
      /Ways out.*With 2 more fuel cans.*Not all were tried.*Only after a telephone call.*Far Pump/,
    );
  });

  it('says first on which stretch how much is too little', () => {
    const reply = without();
    const [, onward] = reply.plan.legs.fuel;
    Object.assign(reply.plan.breaks[0]!, { from: onward!.from, to: onward!.to });
    expect(shown(held(reply))).toContain(
      '30 L of diesel too little, Reed Cross (km 300) to High Cairn (km 1,200). 30 L lack',
    );
  });

  it('gives each way out with its figures', () => {
    const text = shown(held(without()));
    expect(text).toContain('More cans: 2 cans more, 43 kg more when full, 6 fuel and 0 water cans in all.');
    expect(text).toContain('Another stop: 4 km there and back, 4 fuel and 0 water cans in all. If Far Pump');
  });

  it('adds up what is laid and driven, and names the stops that are gone by', () => {
    const reply = without();
    const [ready, waiting] = reply.plan.waysOut;
    const depot = { atKm: 500, commodity: 'fuel' as const, cans: 2, litres: 40, latest: true };
    Object.assign(ready!, {
      kind: 'depot',
      unit: 'l',
      amount: 40,
      depots: [depot, { ...depot, litres: 60 }],
    });
    const stop = { id: 'node/9', name: null, kind: 'spring', commodity: 'water' as const, atKm: 700 };
    const far = { ...stop, drivingKm: 4, evidence: 'doubtful' as const, counts: false };
    waiting!.stops = [
      { ...far, name: 'Far Pump' },
      { ...far, drivingKm: 16 },
    ];
    const text = shown(held(reply));
    expect(text).toContain('A depot laid beforehand: 100 L laid');
    expect(text).toContain('By Far Pump and spring: 20 km there and back');
  });

  it('has all of it in the units of the reader, sentences of the server too', () => {
    const text = shown(held(without()), formOf('us'));
    expect(text).toContain('7.9 gal lack on the last stretch.');
    expect(text).toContain('2 cans more, 95 lb more when full');
    expect(text).toContain('Another stop: 2.5 mi there and back');
    expect(text).toContain('If Far Pump (mile 435) has fuel there is a plan.');
    expect(text).not.toMatch(/\d (km|l|kg)\b|\bkm \d/);
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
