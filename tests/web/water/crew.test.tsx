import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import type { WaterUse } from '../../../server/contract/crew.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';
import { withCrew, withoutCrew } from '../../../web/water/crew-start.ts';
import { WaterFigures } from '../../../web/water/WaterFigures.tsx';
import { sampleReply } from '../sample-reply.ts';
import { SAMPLE_WATER_USE } from '../sample-water-use.ts';

const { rig } = sampleReply().analysis;
const textOf = (markup: string) =>
  markup
    .replace(/<[^>]*>/g, ' ')
    .replace(/[\s\u00a0]+/g, ' ')
    .replaceAll('&#x27;', "'");

describe('a crew added to a rig', () => {
  it('keeps the figure for all aboard as the observed one: the litres reckoned with stay the same', () => {
    const crewed = withCrew(rig);
    expect(crewed.water.litresPerDay).toBeUndefined();
    expect(crewed.crew?.observedLitresPerDay).toEqual(rig.water.litresPerDay);
    expect(settleRig(crewed).rig.water.litresPerDay.high).toBeCloseTo(18, 9);
  });

  it('goes again without a change to the rig', () => {
    expect(withoutCrew(withCrew(rig), null)).toEqual(rig);
  });

  it('leaves what it was reckoned to use, rounded up and never down, where nothing was observed', () => {
    const { observedLitresPerDay: _, ...crew } = withCrew(rig).crew!;
    const bare: RigFile = { ...withCrew(rig), crew };
    const left = withoutCrew(bare, { low: 10.01, typical: 12.34, high: 15 });
    expect(left.crew).toBeUndefined();
    expect(left.water.litresPerDay).toEqual({ low: 10.1, typical: 12.4, high: 15 });
  });

  it('takes the grades of containers away with it, as they mean nothing without a crew', () => {
    const crewed = withCrew(rig);
    const graded: RigFile = {
      ...crewed,
      water: {
        ...crewed.water,
        tanks: [{ name: 'floor', litres: 70, grade: 'drinking', apart: true }],
        cans: { litres: 20, owned: 2, grade: 'washing' },
      },
    };
    expect(withoutCrew(graded, null).water).toEqual({
      litresPerDay: rig.water.litresPerDay,
      tanks: [{ name: 'floor', litres: 70, apart: true }],
      cans: { litres: 20, owned: 2 },
    });
  });
});

const GRADED: WaterUse = {
  ...SAMPLE_WATER_USE,
  from: 'crew',
  litresPerDay: { low: 10, typical: 12, high: 16 },
  uses: [
    {
      use: 'drinking',
      grade: 'drinking',
      litresPerDay: { low: 6, typical: 8, high: 11 },
      source: 'a table of levels',
    },
    { use: 'shower', grade: 'washing', litresPerDay: { low: 4, typical: 4, high: 5 }, source: 'own figure' },
  ],
  grades: {
    drinking: {
      litresPerDay: { low: 6, typical: 8, high: 11 },
      aboardL: 44,
      enduranceDays: { low: 7.33, typical: 5.5, high: 4 },
    },
    washing: { litresPerDay: { low: 4, typical: 4, high: 5 }, aboardL: 26, enduranceDays: null },
  },
  heat: {
    wbgtC: 31,
    from: 'estimate',
    category: 4,
    sun: 'full',
    windKmPerHour: 3.6,
    work: 'moderate',
    workHoursPerDay: 2,
    restFactor: 1.4,
    litresPerWorkHour: { low: 0.7, typical: 0.8, high: 0.9 },
    workRest: { workMinutes: 20, restMinutes: 40 },
    why: 'from the tables of a manual',
  },
  reserve: { ...SAMPLE_WATER_USE.reserve, hoursToHelp: 60 },
  cautions: [{ code: 'some-caution', text: 'Never ration drinking water.' }],
};

describe('the figures of water', () => {
  const text = textOf(renderToStaticMarkup(<WaterFigures use={GRADED} units="metric" />));

  it('show each use with its source, by grade, and the days that each grade lasts', () => {
    expect(text).toContain('Drinking grade 6 8 11');
    expect(text).toContain('shower why shower own figure 4 4 5');
    expect(text).toContain('a table of levels');
    expect(text).toContain('drinking grade 44 7.3 5.5 4');
    expect(text).toContain('for washing 26 not used not used not used');
  });

  it('say how the heat raises the need, with work and rest', () => {
    expect(text).toContain('WBGT 31 °C (estimate), full sun, moderate work, heat category 4 of 5');
    expect(text).toContain('Work 20 minutes of an hour, rest 40');
    expect(textOf(renderToStaticMarkup(<WaterFigures use={GRADED} units="us" />))).toContain('WBGT 88 °F');
  });

  it('say that a reserve is not held where one leak can take it, and never otherwise', () => {
    expect(text).toContain('the reserve is not safe from one leak, pump or tap');
    const held = { ...GRADED, reserve: { ...GRADED.reserve, safeL: 20, holds: true } };
    const heldText = textOf(renderToStaticMarkup(<WaterFigures use={held} units="metric" />));
    expect(heldText).toContain('the reserve holds');
    expect(heldText).not.toContain('not safe');
  });

  it('show every caution, and how long until help', () => {
    expect(text).toContain('Never ration drinking water.');
    expect(text).toContain('help takes 60 hours');
  });
});
