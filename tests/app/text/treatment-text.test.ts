import { describe, expect, it } from 'vitest';
import { treatmentLines } from '../../../server/app/text/treatment-text.ts';
import { LAMP, reportOn, ULTRAFILTER } from '../../core/treatment/lines.ts';

describe('the treatment line in text', () => {
  it('is empty without one', () => expect(treatmentLines(null)).toEqual([]));

  it('says what it reaches, what runs from its taps, and what it makes fit', () => {
    const taps = [{ name: 'sink\u001b[31m', afterStage: 2, use: 'drinking' as const, measuredLPerMin: 0.5 }];
    const lines = treatmentLines(reportOn([{ ...ULTRAFILTER, lifeLitres: 50 }, LAMP], { taps }));
    expect(lines[0]).toBe('Treatment line (at the tap): meets its target');
    expect(lines).toContain('Tap sink [31m (drinking): 0.5 l/min (measured), starves, reaches the target');
    expect(lines).toContain('Cartridge 1 ultrafilter: 70.0 l on this trip, 20.0 l more than it has left');
    expect(lines).toContain(
      'Makes fit without a note of yours: piped-tap, village-well, spring, river, rain-tank',
    );
    expect(lines.some((line) => line.startsWith('- not bore, unknown: salt not known'))).toBe(true);
  });

  it('says by how much it falls short', () => {
    expect(treatmentLines(reportOn([ULTRAFILTER]))[0]).toBe(
      'Treatment line (at the tap): falls short of its target by 3.0 log of bacteria, 4.0 log of viruses',
    );
  });
});
