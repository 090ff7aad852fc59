import type { Commodity, Evidence, Verdict } from '../../../../contract/common.ts';

const VERDICTS: Record<Verdict, string> = {
  enough: 'enough',
  'into-reserve': 'into reserve',
  short: 'short',
  unknown: 'unknown',
};

const EVIDENCE: Record<Evidence, string> = {
  confirmed: 'confirmed',
  stated: 'stated',
  implied: 'implied',
  doubtful: 'doubtful',
};

const COMMODITIES: Record<Commodity, string> = { fuel: 'fuel', water: 'water' };

/** What all reports have in common. Figures come in as they are set. */
export const LINE_WORDS = {
  verdicts: VERDICTS,
  evidence: EVIDENCE,
  commodities: COMMODITIES,
  commodity: (name: Commodity) => COMMODITIES[name],
  both: (names: readonly Commodity[]) => names.map((name) => COMMODITIES[name]).join(' and '),
  km: (figure: string) => `${figure} km`,
  litres: (figure: string) => `${figure} l`,
  hours: (figure: string) => `${figure} h`,
  atKm: (figure: string) => `km ${figure}`,
  days: (figure: string) => (figure === '1' ? '1 day' : `${figure} days`),
  partWithoutData: (verdict: string) => `${verdict}, part without data`,
  cans: (count: number) => `${count} ${count === 1 ? 'can' : 'cans'}`,
  place: (name: string, at: string) => `${name} (${at})`,
  unnamedPlaces: { start: 'the start', end: 'the end', passing: 'a supply' },
  noTelephone: 'no telephone known',
  telephone: (number: string) => `telephone ${number}`,
  openHours: (hours: string) => `hours ${hours}`,
};
