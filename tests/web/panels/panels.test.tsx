import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { FormContext } from '../../../web/form/form-context.ts';
import { GapDetails } from '../../../web/panels/GapDetails.tsx';
import { GapsPanel } from '../../../web/panels/GapsPanel.tsx';
import { NotesPanel } from '../../../web/panels/NotesPanel.tsx';
import { SuppliesPanel } from '../../../web/panels/SuppliesPanel.tsx';
import { sampleReply } from '../sample-reply.ts';

const { analysis, map } = sampleReply();
const { passings } = analysis;
const nothing = () => {};
const textOf = (markup: string) => markup.replace(/<[^>]*>/g, ' ').replaceAll('\u00a0', ' ');

describe('the tables', () => {
  it('have a row for each gap of both commodities', () => {
    const markup = renderToStaticMarkup(
      <GapsPanel analysis={analysis} units="metric" selected={null} onFocus={nothing} />,
    );
    const rows = markup.match(/scope="row"/g) ?? [];
    expect(rows).toHaveLength(analysis.fuel.gaps.length + analysis.water.gaps.length);
  });

  it('say of every column whether it is sorted', () => {
    const markup = renderToStaticMarkup(
      <GapsPanel analysis={analysis} units="metric" selected={null} onFocus={nothing} />,
    );
    const heads = markup.match(/scope="col"/g) ?? [];
    expect(markup.match(/aria-sort="none"/g)).toHaveLength(heads.length);
  });

  it('show every stop, with why it does not count', () => {
    const markup = renderToStaticMarkup(
      <SuppliesPanel
        washingSources={[]}
        {...{ analysis, map }}
        units="metric"
        selected={null}
        onFocus={nothing}
        onFound={nothing}
      />,
    );
    const stops = new Set(analysis.passings.map(({ stop }) => stop));
    expect(stops.size).toBeLessThan(analysis.passings.length);
    expect(markup.match(/scope="row"/g)).toHaveLength(stops.size);
    for (const passing of analysis.passings.filter((each) => !each.counts)) {
      expect(textOf(markup)).toContain(passing.reasons[0]?.text ?? 'does not count');
    }
    // Of a stop the only one that is relied on has its name there.
    for (const { name, kind } of analysis.passings.filter((each) => each.counts))
      expect(textOf(markup)).toContain(name ?? kind);
  });

  it('leaf twenty thousand passings, a page at a time', () => {
    const many = Array.from({ length: 20_000 }, (_, index) => ({
      ...analysis.passings[index % analysis.passings.length]!,
      id: `node/${index}`,
      stop: index,
    }));
    const markup = renderToStaticMarkup(
      <SuppliesPanel
        washingSources={[]}
        analysis={{ ...analysis, passings: many }}
        map={map}
        units="metric"
        selected={null}
        onFocus={nothing}
        onFound={nothing}
      />,
    );
    expect(markup.match(/scope="row"/g)).toHaveLength(60);
    expect(textOf(markup)).toMatch(/1\s+to\s+60\s+of\s+[\d,]+/);
    expect(textOf(markup)).toContain('All 20,000');
  });
});

describe("a gap's details", () => {
  it.each(analysis.fuel.gaps.map((gap, index) => [index, gap] as const))(
    'show the working of fuel gap %i',
    (_, gap) => {
      const text = textOf(
        renderToStaticMarkup(<GapDetails {...{ gap, passings }} commodity="fuel" canL={20} units="metric" />),
      );
      for (const term of [...gap.working.wayKm, ...gap.working.needL, ...gap.working.reserveL]) {
        expect(text).toContain(term.label);
      }
      if (gap.extraCans > 0) expect(text).toContain(`${gap.extraCans} can`);
      if (gap.ifToFails !== null) expect(text).toMatch(/fails/);
    },
  );

  it('tell what weakens or advises of both its ends, and of no other supply', () => {
    const [gap] = analysis.fuel.gaps.filter(({ from, to }) => from.id !== null && to.id !== null);
    if (gap === undefined) throw new Error('the sample has no stretch between two supplies');
    const reason = (text: string) => [{ code: 'seasonal', text, parts: [{ text }] }];
    const told = passings.map((passing) => ({
      ...passing,
      reasons: reason(
        passing.commodity !== 'fuel'
          ? 'of water'
          : passing.id === gap.from.id && passing.atKm === gap.from.atKm
            ? 'of the one end'
            : passing.id === gap.to.id && passing.atKm === gap.to.atKm
              ? 'of the other end'
              : 'of another',
      ),
    })) as typeof passings;
    const text = textOf(
      renderToStaticMarkup(
        <GapDetails {...{ gap, passings: told }} commodity="fuel" canL={20} units="metric" />,
      ),
    );
    expect(text).toContain('of the one end');
    expect(text).toContain('of the other end');
    expect(text).not.toMatch(/of water|of another/);
  });

  it('never call a null turn-back point a place', () => {
    const gap = { ...analysis.fuel.gaps[0]!, turnBackKm: null };
    const text = textOf(
      renderToStaticMarkup(<GapDetails {...{ gap, passings }} commodity="fuel" canL={20} units="metric" />),
    );
    expect(text).toContain('no turning back');
  });
});

describe('the notes', () => {
  const said = { rig: { ...analysis.rig, sure: ['/fuel/litresPer100Km'] }, trip: {} };
  const onEdit = () => {};
  const text = textOf(
    renderToStaticMarkup(
      <FormContext.Provider value={{ analysis, said, units: 'metric', problem: null, onEdit }}>
        <NotesPanel {...{ analysis, said, onEdit }} notice={null} units="metric" place={null} />
      </FormContext.Provider>,
    ),
  );

  it('show every caution, assumption and skipped object', () => {
    for (const { text: caution } of [...analysis.standing, ...analysis.cautions]) {
      expect(text).toContain(caution.replaceAll("'", '&#x27;'));
    }
    for (const { value } of analysis.assumptions) expect(text).toContain(value);
    for (const { id } of analysis.skipped) expect(text).toContain(id);
  });

  it('list the unusual figures that are meant so', () => {
    expect(text).toContain('Unusual figures that are meant so');
    expect(text).toContain('Fuel use');
    expect(text).toContain('No longer');
  });

  it('name the data, its licence and whose it is', () => {
    expect(text).toContain('© OpenStreetMap contributors');
    expect(text).toContain('Open Database License');
    expect(text).toContain('Natural Earth');
  });
});
