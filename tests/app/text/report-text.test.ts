import { describe, expect, it } from 'vitest';
import { gapTable } from '../../../server/app/text/gap-table.ts';
import { figure } from '../../../server/app/text/lines/figures.ts';
import { plain, shortened } from '../../../server/app/text/lines/plain.ts';
import { ProgressLine } from '../../../server/app/text/lines/progress-line.ts';
import { sentenceText } from '../../../server/app/text/lines/sentence-text.ts';
import { tableText } from '../../../server/app/text/lines/table-text.ts';
import { gapOf, reportOf } from '../gap-builder.ts';

describe('figures', () => {
  it.each([
    [12.34, '12.3'],
    [0, '0.0'],
    [-0, '0.0'],
    [-0.04, '-0.040'],
    [0.0001, '0.0'],
    [-9.442, '-9.4'],
  ])('%d is printed as %s', (value, text) => expect(figure(value)).toBe(text));
});

describe('text from files', () => {
  it('cannot steer a terminal or break a line', () => {
    expect(plain('Well\u001b[31m red\u0007\nnext\u202eline\u2028')).toBe('Well [31m red next line');
  });

  it('is cut between characters, not inside one', () => {
    expect(shortened('🚰🚰🚰', 2)).toBe('🚰…');
    expect(shortened('tap', 3)).toBe('tap');
  });
});

describe('a sentence', () => {
  it('sets its quantities with their units', () => {
    const text = sentenceText([
      'From ',
      { quantity: 212.04, unit: 'km', as: 'at' },
      ' carry ',
      { quantity: 2, unit: 'count', as: 'much' },
      ' cans, ',
      { quantity: 32.15, unit: 'l', as: 'much' },
      ', for ',
      { quantity: 1, unit: 'days', as: 'much' },
      ': ',
      { strong: 'short', verdict: 'short' },
    ]);
    expect(text).toBe('From km 212.0 carry 2 cans, 32.1 l, for 1 day: short');
  });
});

describe('a table', () => {
  it('has the unit of every figure below its head', () => {
    const lines = tableText(
      [
        { head: 'from', unit: '', lean: 'left' },
        { head: 'need', unit: 'l', lean: 'right' },
      ],
      [
        ['Ketta', '1.0'],
        ['b', '100.0'],
      ],
    );
    expect(lines).toEqual(['from    need', '           l', 'Ketta    1.0', 'b      100.0']);
  });

  it('shows every gap where there are few', () => {
    const gaps = Array.from({ length: 40 }, (_, i) => gapOf(i, i + 1));
    expect(gapTable(reportOf(gaps)).length).toBe(42);
  });

  it('folds runs of gaps that are enough where there are many, and hides none that is not', () => {
    const gaps = Array.from({ length: 500 }, (_, i) => gapOf(i * 10, i * 10 + 1 + (i % 7)));
    const bad = [3, 4, 250, 499];
    for (const index of bad) gaps[index] = { ...gaps[index]!, verdict: 'short', marginL: -5 };
    gaps[100] = { ...gaps[100]!, marginL: 12.5 };
    const lines = gapTable(reportOf(gaps));
    const rows = lines.slice(2).filter((line) => /^\s*\d/.test(line));
    expect(rows.length).toBeLessThan(60);
    let next = 1;
    for (const row of rows) {
      const [, first = '', last = first] = /^\s*(\d+)(?:-(\d+))?/.exec(row) ?? [];
      expect(Number(first)).toBe(next);
      next = Number(last) + 1;
    }
    expect(next).toBe(501);
    for (const index of bad) expect(rows.some((row) => row.trim().startsWith(`${index + 1}  at`))).toBe(true);
    // The least margin of a folded run is told.
    expect(rows.some((row) => row.includes('12.5') && row.includes('enough, at most'))).toBe(true);
    expect(lines.some((line) => line.includes('--json gives every gap'))).toBe(true);
  });

  it('tells below what could rescue a short gap and why it does not count', () => {
    const rescue = {
      id: 'node/9',
      name: 'Depot',
      kind: 'fuel station',
      atKm: 5,
      offRouteKm: 0.5,
      detourKm: 0.65,
      evidence: 'stated' as const,
      counts: false,
      reasons: [{ code: 'private', text: 'Not open to the public' }],
    };
    const lines = gapTable(reportOf([gapOf(0, 10, { verdict: 'short', runsDryKm: 8, rescue: [rescue] })]));
    expect(lines.slice(3)).toEqual([
      'gap 1: runs out at km 8.0',
      'gap 1: could be rescued at km 5.0, 0.5 km off the route: Depot, fuel station, stated (does not count: Not open to the public)',
    ]);
  });
});

describe('the progress line', () => {
  it('keeps quiet in short work, is not written too often, and goes away', () => {
    let nowMs = 0;
    const written: string[] = [];
    const line = new ProgressLine(
      (text) => written.push(text),
      () => nowMs,
    );
    line.show('a.pbf', 1e6, 2e6);
    line.clear();
    expect(written).toEqual([]);
    nowMs = 1000;
    line.show('a.pbf', 1e6, 4e6);
    nowMs = 1010;
    line.show('a.pbf', 2e6, 4e6);
    nowMs = 2000;
    line.show('b.osm', 3e6, null);
    line.clear();
    expect(written).toEqual([
      '\r\u001b[Kreading a.pbf: 1 MB of 4 MB (25 %)',
      '\r\u001b[Kreading b.osm: 3 MB',
      '\r\u001b[K',
    ]);
  });

  it('says for how long work has gone on of which nobody knows the end', () => {
    let nowMs = 5000;
    const written: string[] = [];
    const line = new ProgressLine(
      (text) => written.push(text),
      () => nowMs,
    );
    line.showWork('planning');
    expect(written).toEqual([]);
    nowMs = 8600;
    line.showWork('planning');
    expect(written).toEqual(['\r\u001b[Kplanning, 3 s (Ctrl-C stops it)']);
  });
});
