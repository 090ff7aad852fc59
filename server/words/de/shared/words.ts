import type { Commodity, Evidence } from '../../../contract/common.ts';
import type { FuelKind } from '../../../contract/rig.ts';
import type { Surface } from '../../../contract/surface.ts';

/** Codes in running text. */
export const COMMODITY_WORDS: Record<Commodity, string> = { fuel: 'Kraftstoff', water: 'Wasser' };

export const FUEL_WORDS: Record<FuelKind, string> = {
  diesel: 'Diesel',
  petrol: 'Benzin',
  lpg: 'LPG',
  cng: 'CNG',
  kerosene: 'Kerosin',
  lng: 'LNG',
  e85: 'E85',
};

export const EVIDENCE_WORDS: Record<Evidence, string> = {
  confirmed: 'bestätigt',
  stated: 'verzeichnet',
  implied: 'wahrscheinlich',
  doubtful: 'zweifelhaft',
};

export const SURFACE_WORDS: Record<Surface, string> = {
  sealed: 'befestigt',
  gravel: 'Schotter',
  track: 'Piste',
  sand: 'Sand',
  rock: 'Fels',
  mud: 'Schlamm',
  salt: 'Salz',
  unknown: 'unbekannt',
};

/** "1 Wasserkanister", "4 Kraftstoffkanister"; in the dative plural "4 Kraftstoffkanistern". */
export const cansText = (count: number, commodity: Commodity, dative = false): string =>
  `${count} ${COMMODITY_WORDS[commodity]}kanister${dative && count !== 1 ? 'n' : ''}`;
