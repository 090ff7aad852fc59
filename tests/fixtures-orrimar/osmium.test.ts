import { execFileSync, spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { demoElements, demoPath } from './demo-files.ts';

const isThere = spawnSync('osmium', ['--version']).status === 0;
const name = isThere
  ? 'osmium, an independent reader,'
  : 'osmium is absent on this machine, so its reading of the demo was not checked:';

describe.skipIf(!isThere)(name, () => {
  const elements = demoElements();
  const count = (wanted: string) => elements.filter(({ type }) => type === wanted).length;

  it('reads the pbf: bounds, order, counts and times', () => {
    const info = JSON.parse(
      execFileSync('osmium', ['fileinfo', '-e', '-j', demoPath('orrimar.osm.pbf')], { encoding: 'utf8' }),
    );
    expect(info.file.format).toBe('PBF');
    expect(info.header.boxes).toEqual([[84, -38, 94.2, -34.35]]);
    expect(info.header.option.sorting).toBe('Type_then_ID');
    expect(info.header.with_history).toBe(false);
    expect(info.data.objects_ordered).toBe(true);
    expect(info.data.multiple_versions).toBe(false);
    expect(info.data.count.nodes).toBe(count('node'));
    expect(info.data.count.ways).toBe(count('way'));
    expect(info.data.count.relations).toBe(count('relation'));
    const times = elements.map(({ timestamp }) => timestamp).sort();
    expect(info.data.timestamp).toEqual({ first: times[0], last: times.at(-1) });
  });

  it('finds pbf and XML equal, object by object', () => {
    const summary = spawnSync(
      'osmium',
      ['diff', '-q', '-s', demoPath('orrimar.osm'), demoPath('orrimar.osm.pbf')],
      { encoding: 'utf8' },
    );
    expect(summary.status).toBe(0);
    expect(summary.stderr).toContain(`left=0 right=0 same=${elements.length} different=0`);
  });

  it('finds every node that a way or relation refers to', () => {
    const checked = spawnSync('osmium', ['check-refs', '-r', demoPath('orrimar.osm.pbf')], {
      encoding: 'utf8',
    });
    expect(checked.status, checked.stderr).toBe(0);
  });
});
