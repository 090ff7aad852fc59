import { describe, expect, test } from 'vitest';
import { crewText } from '../../../server/app/text/crew-text.ts';
import { rigOf } from '../../core/crew/crews.ts';
import { analysisOf } from '../../helpers/analyse-input.ts';

const linesOf = (rig?: Parameters<typeof rigOf>) => {
  const { waterUse, water } = analysisOf(rig === undefined ? {} : { rig: rigOf(...rig) });
  return crewText(waterUse, water.gaps);
};

describe('water use in a terminal', () => {
  test('of a rig that tells litres a day is how long they last', () => {
    expect(linesOf()).toEqual([
      'Water use (low, typical, high use)',
      '11.0, 14.0 or 18.0 l a day, your own figure; the 70.0 l aboard at the start last 6.4, 5.0 or 3.9 days',
    ]);
  });

  test('of a crew names uses, grades, heat, the reserve, sources and each gap', () => {
    const heat = { wbgtC: 33, sun: 'some', work: 'easy', workHoursPerDay: 2 } as const;
    const text = linesOf([{ people: [{ count: 2 }], heat, washingAtSource: true }]).join('\n');
    expect(text).toMatch(/^drinking +drinking +\d/m);
    expect(text).toContain('drinking grade: ');
    expect(text).not.toContain('washing grade: ');
    expect(text).toContain('heat: WBGT 33.0 °C as told, category 5 of 5; drinking at rest × 2.12');
    expect(text).toContain('is lost');
    expect(text).toContain('- source: "careful": 10 to 15 l a day for two people');
    expect(text).toMatch(/^gap 1: drinking grade needs \d/m);
  });

  test('says what is taken at the source, and nothing of a grade that is not used', () => {
    const text = linesOf([{ people: [{ level: 'basic' }], washingAtSource: true }]).join('\n');
    expect(text).toContain('taken at the source, not carried: 1.0, 3.0 or 5.0 l a day');
  });
});
