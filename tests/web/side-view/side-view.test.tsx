import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../../server/contract/analysis.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import { SideView } from '../../../web/side-view/SideView.tsx';
import { formatMass, type UnitSystem } from '../../../web/units/units.ts';
import { inUnits } from '../../../web/words/said.ts';
import { drive, rigOf, stateOf } from '../../core/mass/rigs.ts';
import { FULL_RIG } from '../../helpers/full-plan.ts';

const markupOf = (analysis: Analysis, units: UnitSystem = 'metric') =>
  renderToStaticMarkup(<SideView analysis={analysis} units={units} />);
const wordsOf = (markup: string) =>
  markup
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&#x27;', "'")
    .replace(/[\s\u00a0]+/g, ' ');
const massText = (kg: number, units: UnitSystem) => formatMass(kg, units).replace('\u00a0', ' ');

const full = drive(FULL_RIG);

describe('the side view', () => {
  it('shows the masses of the analysis against what is permitted, in the units of each place', () => {
    const departure = stateOf(full.mass!, 'departure');
    for (const units of ['metric', 'us', 'imperial'] as const) {
      const words = wordsOf(markupOf(full, units));
      for (const kg of [
        departure.totalKg,
        departure.front!.kg,
        departure.rear!.kg,
        departure.rear!.leftKg!,
      ]) {
        expect(words).toContain(massText(kg, units));
      }
    }
  });

  it('names everything that is drawn by its number, in drawing and table alike', () => {
    const markup = markupOf(full);
    const drawn = [...markup.matchAll(/class="number"[^>]*>(\d+)</g)].map(([, number]) => number);
    const { people, pets, gear } = FULL_RIG.vehicle!;
    const count = 6 + people!.length + pets!.length + gear!.length;
    expect(drawn).toEqual(Array.from({ length: count }, (_, index) => String(index + 1)));
    for (const number of drawn) expect(markup).toContain(`<b>${number}</b>`);
    for (const { name } of gear!) expect(wordsOf(markup)).toContain(name);
  });

  it('lets one choose every state of the masses', () => {
    const radios = markupOf(full).match(/type="radio"/g) ?? [];
    expect(radios).toHaveLength(full.mass!.states.length);
  });

  it('says by how much an axle is over its limit, and never that something is left', () => {
    const analysis = drive(rigOf({ permitted: { totalKg: 3500, frontKg: 1900, rearKg: 1400 } }));
    const over = -stateOf(analysis.mass!, 'departure').rear!.leftKg!;
    expect(over).toBeGreaterThan(0);
    const markup = markupOf(analysis);
    expect(wordsOf(markup)).toContain(`${massText(over, 'metric')} over`);
    expect(markup).toContain('axle-over');
    expect(wordsOf(markup)).toContain('On this route the rear axle');
  });

  it('calls what was not told not told, and names it in the words of the form', () => {
    const { axleKg: _axleKg, cgHeightM: _height, ...vehicle } = rigOf().vehicle!;
    const analysis = drive({ ...rigOf(), vehicle });
    const words = wordsOf(markupOf(analysis));
    expect(words).toMatch(/Front axle not known not told –/);
    expect(words).toMatch(/Centre of gravity why .* not known/);
    expect(words).not.toMatch(/ \/vehicle\//);
  });

  it('shows where a figure comes from: each term of the sum, and who says what a litre weighs', () => {
    const words = wordsOf(markupOf(full));
    for (const { label, labelParts } of full.mass!.working.rearKg)
      expect(words).toContain(inUnits('metric', label, labelParts).replaceAll('\u00a0', ' '));
    for (const { source } of full.mass!.densities) expect(words).toContain(source);
    for (const { source } of full.mass!.fuelLimits) expect(words).toContain(source);
  });

  it('tells one tank just ahead of the rear axle from one at the very back', () => {
    // Common practice, no source: the first must come out with less rear-axle load for each litre.
    const water: RigFile['water'] = {
      ...rigOf().water,
      tanks: [
        { name: 'ahead', litres: 95, position: { behindFrontAxleM: 2.5, heightM: 0.6 } },
        { name: 'very back', litres: 40, position: { behindFrontAxleM: 3.7, heightM: 0.6 } },
      ],
    };
    const analysis = drive({ ...rigOf(), water });
    const rows = markupOf(analysis).split(/<tr|<\/tr>/);
    const rearOf = (name: string) =>
      Number(
        wordsOf(`<${rows.find((row) => row.includes(`</b> ${name}`))!}`)
          .trim()
          .split(' ')
          .at(-1),
      );
    expect(rearOf('ahead')).toBeCloseTo(2.5 / 2.85, 2);
    expect(rearOf('very back')).toBeGreaterThan(rearOf('ahead'));
  });

  it('is not there without a vehicle', () => {
    const { vehicle: _vehicle, ...rig } = rigOf();
    expect(markupOf(drive(rig))).toBe('');
  });
});
