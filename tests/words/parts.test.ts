import { describe, expect, it } from 'vitest';
import { toContract } from '../../server/app/to-contract.ts';
import { figure, fixed, rounded } from '../../server/words/parts/figures.ts';
import { isReadersOwn, metricText } from '../../server/words/parts/metric.ts';
import { joined, parts } from '../../server/words/parts/part.ts';

describe('parts', () => {
  it('keep words together and quantities apart', () => {
    expect(parts`Work may take ${rounded(1.26, 'l')} an hour${''}, ${'no'} more`).toEqual([
      { text: 'Work may take ' },
      { figure: 1.26, unit: 'l', decimals: 1 },
      { text: ' an hour, no more' },
    ]);
  });

  it('keep stressed words apart', () => {
    const stressed = { text: 'Runs dry at ', strong: true, verdict: 'short' } as const;
    expect(parts`${stressed}${{ place: 12 }}.`).toEqual([stressed, { place: 12 }, { text: '.' }]);
  });

  it('are joined with words between', () => {
    expect(metricText(joined([parts`a`, parts`b`, parts`${figure(3, 'kg')}`], ', '))).toBe('a, b, 3 kg');
    expect(joined([], ', ')).toEqual([]);
  });
});

describe('metric text', () => {
  it('rounds, fixes or leaves figures as they are', () => {
    expect(metricText([rounded(12.04, 'l')])).toBe('12 l');
    expect(metricText([fixed(12.04, 'km')])).toBe('12.0 km');
    expect(metricText([figure(0.1 + 0.2, 'kg')])).toBe('0.30000000000000004 kg');
    expect(metricText([{ place: 212.04, decimals: 1, fixed: true }])).toBe('km 212.0');
    expect(metricText([{ ...figure(5, 'km'), bare: true }, { text: ' to ' }, figure(12, 'km')])).toBe(
      '5 to 12 km',
    );
  });

  it('knows whether units matter', () => {
    expect(isReadersOwn(parts`none`)).toBe(false);
    expect(isReadersOwn([figure(3, 'count')])).toBe(false);
    expect(isReadersOwn([{ place: 3 }])).toBe(true);
  });
});

describe('the way to the contract', () => {
  it('turns metres along the route into kilometres, and leaves other metres', () => {
    expect(toContract({ atM: 1500, heightM: 1.2, spans: [{ fromM: 0, toM: 10 }], turnBackM: null })).toEqual({
      atKm: 1.5,
      heightM: 1.2,
      spans: [{ fromKm: 0, toKm: 0.01 }],
      turnBackKm: null,
    });
  });

  it('puts what core says into words, with parts where there are figures', () => {
    const caution = {
      code: 'camp-off-route',
      facts: { name: 'Ridge', offM: 12_340 },
      fromM: 5000,
      toM: 5000,
    } as const;
    expect(toContract(caution)).toEqual({
      code: 'camp-off-route',
      text: 'The camp "Ridge" is 12.3 km off the route and is left out.',
      parts: [
        { text: 'The camp "Ridge" is ' },
        { figure: 12.34, unit: 'km', decimals: 1, fixed: true },
        { text: ' off the route and is left out.' },
      ],
      fromKm: 5,
      toKm: 5,
    });
    expect(
      toContract({ label: { phrase: 'along-the-route', facts: {} }, value: 2500, unit: 'm of way' }),
    ).toEqual({
      label: 'along the route',
      value: 2.5,
      unit: 'km',
    });
  });
});
