import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { SupplyCard } from '../../../web/map/SupplyCard.tsx';
import { supplyFacts } from '../../../web/map/supply-facts.ts';
import { sampleReply } from '../sample-reply.ts';

const card = (id: string, reply = sampleReply(), used: ReadonlySet<string> | null = null) =>
  renderToStaticMarkup(
    <SupplyCard facts={supplyFacts(reply, id)!} used={used} units="metric" onClose={() => {}} />,
  )
    .replaceAll('\u00a0', ' ')
    .replaceAll('<!-- -->', '');

describe('the card of a supply point', () => {
  test('names it and holds both of its commodities', () => {
    const markup = card('node/1');
    expect(markup).toContain('>Low Bridge</h3>');
    expect(markup).toContain('fuel station');
    expect(markup).toContain('drinking water: <b>relied on</b>, listed, fit to drink as it is');
  });

  test('lists every passing with its detour', () => {
    const markup = card('node/1');
    expect(markup).toContain('<b>km 180</b>, 0.3 km off the route, detour 0.4 km one way');
    expect(markup).toContain('<b>km 210</b>');
  });

  test('says why a point does not count, and shows its tags', () => {
    const markup = card('node/4');
    expect(markup).toContain('<b>not relied on</b>, likely');
    expect(markup).toContain('not stated fit to drink');
    expect(markup).toContain('<dt>drinking_water</dt><dd>yes</dd>');
  });

  test('says what the plan does with each commodity that counts, once there is one', () => {
    expect(card('node/1')).not.toContain('The plan');
    const markup = card('node/1', sampleReply(), new Set(['fuel node/1']));
    expect(markup.match(/The plan (fills here|passes it by)/g)).toEqual([
      'The plan fills here',
      'The plan passes it by',
    ]);
    expect(card('node/4', sampleReply(), new Set())).not.toContain('The plan');
  });

  test('is a dialog by its name that can be closed', () => {
    const markup = card('node/3');
    const title = /<h3 id="([^"]+)">Red Gate/.exec(markup)?.[1];
    expect(markup).toContain(`role="dialog" aria-labelledby="${title}"`);
    expect(markup).toContain('aria-label="Close Red Gate"');
  });

  test('calls an unnamed point by its kind', () => {
    expect(card('node/4')).toContain('>water tap</h3>');
  });

  test('knows a point that is only listed to rescue a short stretch', () => {
    const reply = sampleReply();
    const far = reply.map.supplies.features[0]!;
    reply.map.supplies.features.push({
      ...far,
      properties: { ...far.properties, id: 'node/99', name: 'Far Pump', atKm: [500] },
    });
    reply.analysis.fuel.gaps[1]!.rescue.push({
      id: 'node/99',
      name: 'Far Pump',
      kind: 'fuel station',
      atKm: 500,
      offRouteKm: 31,
      detourKm: 40,
      evidence: 'implied',
      counts: true,
      reasons: [],
    });
    const markup = card('node/99', reply);
    expect(markup).toContain('Beyond the corridor');
    expect(markup).toContain('31 km off the route, detour 40 km one way');
  });

  test('there is none for a point that is not drawn', () => {
    expect(supplyFacts(sampleReply(), 'node/12345')).toBeNull();
  });
});
