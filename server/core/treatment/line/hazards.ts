import type { Hazard as HazardTold, SourceKind } from '../../../contract/treatment.ts';
import type { HazardReason } from '../../phrases/rig/treatment-waters.ts';

/** What may be in the water of a kind of source. */
export type Hazard = Omit<HazardTold, 'why'> & { readonly why: HazardReason };

/**
 * What to expect of each kind of source where nobody tested it. All of it is ours: common sense on the safe side, to be
 * edited by who knows better. Cloudiness is that of an ordinary day, not of a flood.
 */
export const EXPECTED: Record<SourceKind, Omit<Hazard, 'why'>> = {
  'piped-tap': {
    microbial: true,
    salt: 'no',
    chemicals: 'no',
    turbidityNtu: 1,
  },
  'village-well': {
    microbial: true,
    salt: 'no',
    chemicals: 'unknown',
    turbidityNtu: 5,
  },
  bore: {
    microbial: true,
    salt: 'unknown',
    chemicals: 'unknown',
    turbidityNtu: 5,
  },
  spring: {
    microbial: true,
    salt: 'no',
    chemicals: 'unknown',
    turbidityNtu: 1,
  },
  river: {
    microbial: true,
    salt: 'no',
    chemicals: 'unknown',
    turbidityNtu: 50,
  },
  'rain-tank': {
    microbial: true,
    salt: 'no',
    chemicals: 'no',
    turbidityNtu: 5,
  },
  unknown: {
    microbial: true,
    salt: 'unknown',
    chemicals: 'unknown',
    turbidityNtu: 50,
  },
};

export const SOURCE_KINDS = Object.keys(EXPECTED) as SourceKind[];
