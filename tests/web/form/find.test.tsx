import fc from 'fast-check';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { Fields } from '../../../web/form/Fields.tsx';
import { FindContext, finds, wishOf } from '../../../web/form/find.ts';
import { FormContext, type FormState, RIG } from '../../../web/form/form-context.ts';
import { type FormItem, fold, group, optional, quantity, text, when } from '../../../web/form/items.ts';
import { asGroup, RIG_SECTIONS } from '../../../web/rig/sections.ts';
import { sampleReply } from '../sample-reply.ts';

const { analysis } = sampleReply();
const form: FormState = {
  analysis,
  said: { rig: analysis.rig, trip: analysis.trip },
  units: 'metric',
  problem: null,
  onEdit: () => {},
};

const TANKS: FormItem = {
  item: 'list',
  legend: 'Fixed tanks',
  one: 'tank',
  at: '/fuel/tanks',
  fresh: () => ({}),
  items: [quantity('Holds', '/litres', 'volume'), optional('of it unusable', '/unusableLitres', 'volume')],
};
const ITEMS: readonly FormItem[] = [
  group('Fuel', [
    TANKS,
    fold('By the hour', [optional('Engine idling', '/fuel/perHour/idling', 'hourUse')]),
    when(() => false, [text('Octane', '/fuel/engine/octane')]),
  ]),
  text('Name of the rig', '/name'),
];

/** What stands on the screen while this is looked for. */
const shown = (typed: string, items = ITEMS): string =>
  renderToStaticMarkup(
    <FormContext.Provider value={form}>
      <FindContext.Provider value={wishOf(typed)}>
        <Fields items={items} at={RIG} />
      </FindContext.Provider>
    </FormContext.Provider>,
  );
const labels = (typed: string, items = ITEMS): string[] =>
  [...shown(typed, items).matchAll(/<label[^>]*>([^<]*)/g)].map(([, words = '']) => words);

describe('finding a field', () => {
  it.each([
    ['idling', ['Engine idling']],
    ['IDLING', ['Engine idling']],
    ['name', ['Name of the rig']],
    ['tanks holds', ['Holds']],
    ['holds fuel', ['Holds']],
    ['fixed tanks', ['Holds', 'of it unusable']],
    ['fuel', ['Holds', 'of it unusable', 'Engine idling']],
    ['octane', []],
    ['nowhere', []],
  ])('by %j', (typed, wanted) => {
    expect([...new Set(labels(typed))]).toEqual(wanted);
  });

  it('shows all while nothing is typed, and folds nothing open', () => {
    expect(labels('  ')).toEqual(labels(''));
    expect(shown('')).not.toContain('<details open');
    expect(shown('idling')).toContain('<details open');
  });

  it('leads to a field that is not told yet by the button that adds it', () => {
    const part: FormItem = {
      item: 'part',
      what: 'the heat expected',
      at: '/nowhere',
      without: 'Not told.',
      start: {},
      items: [quantity('Humidity', '/humidityPercent', 'percent')],
    };
    expect(shown('humidity', [part])).toMatch(/class="found-way".*Add the heat expected/);
  });
});

const leaves = (item: FormItem): string[] =>
  'label' in item ? [item.label] : 'items' in item ? item.items.flatMap(leaves) : [];

describe('the whole rig', () => {
  const parts = RIG_SECTIONS.map(asGroup);
  const told = parts.flatMap((part) => leaves(part));

  it('has every field found by its own label, or it does not stand there now', () => {
    expect(told.length).toBeGreaterThan(100);
    for (const section of parts) {
      const open = section.items.filter(({ item }) => item !== 'case');
      for (const label of open.filter((item) => 'label' in item).flatMap(leaves))
        expect(finds(section, wishOf(label)!, form), label).not.toBeNull();
    }
  });

  it('a longer wish finds nothing that the shorter one does not', () => {
    const word = fc.constantFrom(...told.flatMap((label) => label.split(' ')));
    fc.assert(
      fc.property(word, word, (one, more) => {
        for (const part of parts)
          if (finds(part, wishOf(`${one} ${more}`)!, form) !== null)
            expect(finds(part, wishOf(one)!, form)).not.toBeNull();
      }),
    );
  });
});
