import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import type { PlanReply } from '../../../server/contract/whatif.ts';
import { MapView } from '../../../web/map/MapView.tsx';
import { NO_FOCUS } from '../../../web/state/focus.ts';
import { drawnPlan } from '../drawn-plan.ts';
import { sampleReply } from '../sample-reply.ts';

function draw(reply = sampleReply(), plan: PlanReply | null = null) {
  return renderToStaticMarkup(
    <MapView reply={reply} units="metric" focus={NO_FOCUS} onFocus={() => {}} dark={false} plan={plan} />,
  );
}

test('invented land is said to be invented, on the map and in its attribution', () => {
  const markup = draw();
  expect(markup).toContain('This land is invented. Do not drive by it.');
  expect(markup).toContain('invented data in the form of OpenStreetMap');
  expect(markup).not.toContain('openstreetmap.org');
});

test('real data is attributed to the contributors with its licence', () => {
  const reply = sampleReply();
  reply.map.notice = null;
  const markup = draw(reply);
  expect(markup).toContain('© OpenStreetMap contributors (ODbL)');
  expect(markup).toContain('https://www.openstreetmap.org/copyright');
  expect(markup).not.toContain('invented');
});

test('the legend says what each line means, and calls the fuel by its kind', () => {
  const reply = sampleReply();
  reply.analysis.rig.fuel.kind = 'lpg';
  const markup = draw(reply);
  expect(markup).toContain('Left: LPG');
  for (const words of ['what is left', 'into the reserve', 'runs dry', 'no map data', 'not relied on'])
    expect(markup).toContain(words);
});

test('the legend says what a plan draws only while it is drawn', () => {
  const words = ['full cans carried', 'turn back', 'the plan fills here'];
  const without = draw();
  const markup = draw(sampleReply(), drawnPlan());
  for (const each of words) {
    expect(without).not.toContain(each);
    expect(markup).toContain(each);
  }
  const none = drawnPlan();
  none.plan.status = 'none';
  const found = draw(sampleReply(), none);
  expect(words.filter((each) => found.includes(each))).toEqual([]);
});
