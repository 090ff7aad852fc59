import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { PlanFrame } from '../../../web/plan/PlanFrame.tsx';
import { type Planned, restOf } from '../../../web/state/use-plan.ts';
import { held, textOf } from '../planned.ts';
import { samplePlan } from '../sample-plan.ts';

const markupOf = (planned: Planned) =>
  renderToStaticMarkup(<PlanFrame planned={planned}>{() => <p>the plan</p>}</PlanFrame>);
const shown = (planned: Planned) => textOf(markupOf(planned)).trim();

const REFUSED = {
  code: 'no-answer',
  title: 'The server does not answer',
  status: 0,
  detail: 'It did not come back.',
  source: null,
  place: null,
  remedy: null,
  vouchable: false,
};
const since = (seconds: number) => Date.now() - 1000 * seconds;

describe('while a plan is made', () => {
  it('says what is at work, for how long, and can be stopped', () => {
    expect(shown(held(null, { whole: false, stale: true, slowSince: since(7) }))).toBe('Plan… 7 s Stop');
    expect(shown(held(samplePlan(), { whole: false, slowSince: since(12) }))).toBe(
      'Ways out and safety against one failure… 12 s Stop the plan',
    );
  });

  it('does not read each second aloud', () => {
    const markup = markupOf(held(null, { whole: false, stale: true, slowSince: since(7) }));
    expect(markup).toContain('<span role="status">Plan…</span><span aria-hidden="true">7');
  });

  it('says nothing of work that is quick, and dims the plan before', () => {
    expect(shown(held(samplePlan(), { stale: true }))).toBe('the plan');
    expect(markupOf(held(samplePlan(), { stale: true }))).toContain('plan plan-stale');
    expect(markupOf(held(samplePlan()))).not.toContain('plan-stale');
  });
});

describe('stopped', () => {
  it('says of what the plan is that is shown, and offers to go on', () => {
    expect(shown(held(samplePlan(), { stale: true, stopped: true }))).toBe(
      'Stopped: what is shown is the plan of earlier figures. Go on the plan',
    );
    expect(shown(held(null, { whole: false, stale: true, stopped: true }))).toBe(
      'Stopped: there is no plan yet. Go on',
    );
    expect(shown(held(samplePlan(), { whole: false, stopped: true }))).toBe(
      'Stopped: ways out and safety against one failure were not tried. Go on the plan',
    );
  });
});

describe('refused', () => {
  it('says what is shown instead, and offers to try again', () => {
    expect(shown(held(samplePlan(), { stale: true, problem: REFUSED }))).toMatch(
      /^Not planned; what is shown is the plan of earlier figures\. The server does not answer .* Try again the plan$/,
    );
    expect(shown(held(null, { whole: false, stale: true, problem: REFUSED }))).toMatch(/^Not planned\. The/);
    expect(shown(held(samplePlan(), { whole: false, problem: REFUSED }))).toMatch(
      /^Ways out and safety against one failure could not be tried\./,
    );
  });

  it('says that a route the server no longer has is sent once more', () => {
    const problem = { ...REFUSED, code: 'not-found', title: 'Not found' };
    expect(shown(held(samplePlan(), { stale: true, problem }))).toMatch(
      /^The server no longer has the route; it is sent once more\./,
    );
  });
});

describe('ways out and the plan against one failure', () => {
  it('are there, on their way, or were not tried', () => {
    expect(restOf(held(samplePlan()))).toBe('there');
    expect(restOf(held(samplePlan(), { whole: false }))).toBe('coming');
    for (const end of [{ stopped: true }, { stale: true }, { problem: REFUSED }]) {
      expect(restOf(held(samplePlan(), { whole: false, ...end }))).toBe('not-tried');
    }
  });
});
