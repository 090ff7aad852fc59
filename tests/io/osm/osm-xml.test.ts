import { describe, expect, it } from 'vitest';
import { toContract } from '../../../server/app/to-contract.ts';
import { unite } from '../../../server/io/osm/unite/unite.ts';
import { extractAt, fuelNode, osmXml, scratchFolder } from './scratch.ts';

const put = scratchFolder();
const read = (inside: string, ground: [number, number, number, number] | null = null) =>
  extractAt(put('x.osm', osmXml(inside)), 'x.osm', ground);

const BOUNDS = '<bounds minlat="-36" minlon="84" maxlat="-34" maxlon="87"/>';
const AREA = `
  <node id="11" lat="-35" lon="85"/><node id="12" lat="-35" lon="85.001"/><node id="13" lat="-35.001" lon="85"/>
  <way id="5" version="3" timestamp="2024-05-06T07:08:09Z"><nd ref="11"/><nd ref="12"/><nd ref="13"/><nd ref="11"/>
  <tag k="amenity" v="fuel"/></way>`;

describe('OSM XML', () => {
  it('keeps a wanted way with its nodes and nothing else, with version and time', async () => {
    const extract = await read(`${BOUNDS}<node id="99" lat="-35" lon="86"/>${AREA}`);
    expect(extract.counts).toEqual({ nodes: 4, ways: 1, relations: 0 });
    expect([...extract.wanted]).toEqual(['way/5']);
    expect(extract.elements.map(({ type, id }) => `${type}/${id}`).sort()).toEqual([
      'node/11',
      'node/12',
      'node/13',
      'way/5',
    ]);
    expect(extract.elements.find(({ type }) => type === 'way')).toMatchObject({
      version: 3,
      timestamp: '2024-05-06T07:08:09Z',
      tags: { amenity: 'fuel' },
    });
    expect(extract.bounds).toEqual([84, -36, 87, -34]);
    expect(extract.hull).toBeNull();
  });

  it('takes no tags from what only lends its place', async () => {
    const gate = '<node id="11" lat="-35" lon="85"><tag k="barrier" v="gate"/></node>';
    const extract = await read(gate + AREA.replace('<node id="11" lat="-35" lon="85"/>', ''));
    expect(extract.elements.filter(({ tags }) => tags !== undefined).map(({ id }) => id)).toEqual([5]);
  });

  it('finds members and nodes wherever they stand in the file', async () => {
    const relation = `<relation id="7"><member type="way" ref="6" role="outer"/><tag k="type" v="multipolygon"/>
      <tag k="amenity" v="fuel"/></relation>`;
    const way = '<way id="6"><nd ref="11"/><nd ref="12"/><nd ref="13"/><nd ref="11"/></way>';
    const nodes = `<node id="11" lat="-35" lon="85"/><node id="12" lat="-35" lon="85.001"/>
      <node id="13" lat="-35.001" lon="85"/>`;
    for (const order of [
      [nodes, way, relation],
      [relation, way, nodes],
      [way, nodes, relation],
    ]) {
      const { features, skipped } = unite([await read(order.join(''))], [], []);
      expect(skipped).toEqual([]);
      expect(features.map(({ id, geometry }) => [id, geometry.type])).toEqual([['relation/7', 'Polygon']]);
    }
  });

  it('follows relations within relations', async () => {
    const { features } = unite(
      [
        await read(`<relation id="8"><member type="relation" ref="9" role=""/><tag k="type" v="site"/>
          <tag k="amenity" v="fuel"/></relation>
          <relation id="9"><member type="way" ref="4" role=""/></relation>
          <way id="4"><nd ref="1"/><nd ref="2"/></way><node id="1" lat="10" lon="20"/>
          <node id="2" lat="10" lon="20.002"/>`),
      ],
      [],
      [],
    );
    expect(features.map(({ id }) => id)).toEqual(['relation/8']);
    const at = features[0]?.geometry;
    expect(at?.type === 'Point' && at.coordinates[0]).toBeCloseTo(20.001, 9);
  });

  it('takes centres and geometry that a server wrote into the elements', async () => {
    const { features } = unite(
      [
        await read(`<way id="1"><center lat="1" lon="2"/><nd ref="91"/><tag k="amenity" v="fuel"/></way>
          <way id="2"><nd ref="92" lat="3" lon="4"/><nd ref="93" lat="3" lon="4.1"/><tag k="amenity" v="fuel"/></way>
          <relation id="3"><member type="way" ref="94" role="outer"><nd lat="5" lon="6"/><nd lat="5" lon="6.1"/>
          <nd lat="5.1" lon="6"/><nd lat="5" lon="6"/></member><tag k="type" v="multipolygon"/>
          <tag k="amenity" v="fuel"/></relation>`),
      ],
      [],
      [],
    );
    expect(features.map(({ id, geometry }) => [id, geometry.type])).toEqual([
      ['way/1', 'Point'],
      ['way/2', 'LineString'],
      ['relation/3', 'Polygon'],
    ]);
  });

  it('keeps a way’s written positions beside the nodes that they belong to', async () => {
    const extract = await read(
      '<way id="2"><nd ref="91"/><nd ref="92" lat="3" lon="4"/><nd ref="93"/><tag k="amenity" v="fuel"/></way>',
    );
    expect(extract.elements).toMatchObject([
      { nodes: [91, 92, 93], geometry: [null, { lat: 3, lon: 4 }, null] },
    ]);
  });

  it('passes deleted objects over, also their older versions, and says so', async () => {
    const extract = await read(`${fuelNode(1, 2, 3, 'version="1"')}
      ${fuelNode(1, 2, 3, 'version="2" visible="false"')}
      ${fuelNode(2, 2, 3, 'action="delete"')}${fuelNode(3, 2, 3)}`);
    expect([...extract.wanted]).toEqual(['node/3']);
    expect(extract.cautions.map(({ code }) => code)).toContain('deleted-passed-over');
    const newestFirst = fuelNode(1, 2, 3, 'version="2" visible="false"') + fuelNode(1, 2, 3, 'version="1"');
    expect((await read(newestFirst)).wanted.size).toBe(0);
  });

  it('takes the newest version in the file, whatever the order', async () => {
    const old = '<node id="1" version="1" lat="1" lon="1"><tag k="amenity" v="fuel"/></node>';
    const newer =
      '<node id="1" version="2" lat="2" lon="2"><tag k="amenity" v="fuel"/><tag k="name" v="New"/></node>';
    for (const inside of [old + newer, newer + old]) {
      const extract = await read(inside);
      expect(extract.elements).toMatchObject([{ version: 2, lat: 2, tags: { name: 'New' } }]);
    }
    const closed = '<node id="1" version="3" lat="2" lon="2"><tag k="shop" v="books"/></node>';
    expect((await read(old + newer + closed)).wanted.size).toBe(0);
  });

  it('an object given again as a bare node stays a supply', async () => {
    const extract = await read(`${fuelNode(1, 2, 3)}<node id="1" lat="3" lon="2"/>`);
    expect([...extract.wanted]).toEqual(['node/1']);
  });

  it('lists a wanted node without a usable position as skipped', async () => {
    const tag = '<tag k="amenity" v="fuel"/>';
    const extract = await read(
      `<node id="1">${tag}</node><node id="2" lat="91" lon="0">${tag}</node><node id="3" lat="NaN" lon="0">${tag}</node>`,
    );
    expect(extract.wanted.size).toBe(0);
    expect(extract.skipped.map(({ id }) => id)).toEqual(['node/1', 'node/2', 'node/3']);
    expect(toContract(extract.skipped)[1]?.reason).toMatch(/not on earth: latitude 91/);
    expect(extract.cautions.map(({ code }) => code)).toEqual(['position-missing']);
  });

  it('keeps several declared boxes apart, and tells of one that is none', async () => {
    const extract = await read(`${BOUNDS}<bounds minlat="0" minlon="179" maxlat="1" maxlon="-179"/>
      <bounds minlat="5" minlon="0" maxlat="4" maxlon="1"/>${fuelNode(1, 85, -35)}`);
    expect([extract.bounds, extract.moreBounds]).toEqual([[84, -36, 87, -34], [[179, 0, -179, 1]]]);
    expect(extract.cautions.map(({ code }) => code)).toEqual(['bounds-unusable']);
  });

  it('reads the older way to write bounds', async () => {
    expect((await read('<bound box="-36,84,-34,87" origin="x"/>')).bounds).toEqual([84, -36, 87, -34]);
  });

  it('takes a reply that stopped early to cover nothing', async () => {
    const remark = '<remark> runtime error: Query timed out in "query" at line 3 after 26 seconds. </remark>';
    const extract = await read(BOUNDS + AREA + remark);
    expect([extract.bounds, extract.hull]).toEqual([null, null]);
    expect(extract.cautions[0]?.code).toBe('extract-incomplete');
    const supplies = unite([extract], [], []);
    expect([supplies.features.length, supplies.cover]).toEqual([1, []]);
    const unbounded = await read(AREA + remark);
    expect([unbounded.hull, unite([unbounded], [], []).cover]).toEqual([null, []]);
  });

  it('tells a general map from a file cut down to supplies', async () => {
    expect((await read(AREA)).shows).toEqual({ fuel: true, water: false, general: false });
    const road = '<way id="1"><nd ref="11"/><nd ref="12"/><tag k="highway" v="track"/></way>';
    expect((await read(AREA + road)).shows.general).toBe(false);
    const five = (one: string) => [1, 2, 3, 4, 5].map((id) => one.replace('id="1"', `id="90${id}"`)).join('');
    const place = '<node id="1" lat="1" lon="1"><tag k="place" v="town"/></node>';
    const house = '<node id="1" lat="1" lon="1"><tag k="building" v="yes"/></node>';
    expect((await read(AREA + five(place) + five(house))).shows.general).toBe(false);
    expect((await read(AREA + five(road) + five(house))).shows.general).toBe(false);
    expect((await read(AREA + five(road) + five(place))).shows.general).toBe(false);
    expect((await read(AREA + five(road) + five(place) + five(house))).shows.general).toBe(true);
    // The road at a service area is part of the supply's own tags.
    const services =
      '<node id="1" lat="1" lon="1"><tag k="amenity" v="fuel"/><tag k="highway" v="services"/></node>';
    expect((await read(services)).shows.general).toBe(false);
  });

  it('keeps the ground in the box, in whichever order the file has it', async () => {
    const nodes = `<node id="11" lat="-35" lon="85"/><node id="12" lat="-35" lon="95"/><node id="13" lat="0" lon="0"/>
      <node id="14" lat="-35" lon="85.5"><tag k="place" v="town"/><tag k="name" v="Aller"/></node>
      <node id="15" lat="0" lon="0"><tag k="place" v="town"/></node>`;
    const ways = `<way id="1"><nd ref="11"/><nd ref="12"/><tag k="highway" v="track"/></way>
      <way id="2"><nd ref="12"/><nd ref="13"/><tag k="highway" v="primary"/></way>
      <way id="3"><nd ref="11"/><nd ref="12"/><tag k="highway" v="footway"/></way>
      <way id="4"><nd ref="11"/><nd ref="13"/><tag k="natural" v="coastline"/></way>`;
    for (const inside of [nodes + ways, ways + nodes]) {
      const { ground } = await read(inside, [84, -36, 86, -34]);
      expect(ground.map(({ type, id }) => `${type}/${id}`).sort()).toEqual(
        ['node/11', 'node/12', 'node/13', 'node/14', 'way/1', 'way/4'].sort(),
      );
    }
  });

  it('keeps a tag whatever its key, and decodes what XML escapes', async () => {
    const extract = await read(
      '<node id="1" lat="1" lon="1"><tag k="amenity" v="fuel"/><tag k="__proto__" v="x"/><tag k="name" v="A &amp; B&#10;&#x41;"/></node>',
    );
    const tags = extract.elements[0]?.tags ?? {};
    expect(Object.keys(tags)).toEqual(['amenity', '__proto__', 'name']);
    expect(tags.name).toBe('A & B\nA');
  });

  it('reads UTF-8 and UTF-16 with a byte order mark', async () => {
    const text = `\ufeff${osmXml(fuelNode(1, 2, 3)).replace(' encoding="UTF-8"', '')}`;
    for (const [name, bytes] of [
      ['utf8', Buffer.from(text, 'utf8')],
      ['utf16', Buffer.from(text, 'utf16le')],
    ] as const) {
      expect((await extractAt(put(name, bytes))).wanted.size).toBe(1);
    }
  });
});
