import type { Hazard, SourceKind } from '../../../contract/treatment.ts';

/**
 * What to expect of each kind of source where nobody tested it. All of it is ours: common sense on the safe side, to be
 * edited by who knows better. Cloudiness is that of an ordinary day, not of a flood.
 */
export const HAZARDS: Record<SourceKind, Hazard> = {
  'piped-tap': {
    microbial: true,
    salt: 'no',
    chemicals: 'no',
    turbidityNtu: 1,
    why: 'pipes leak and tanks on the way stand open: fit for those who live there is not fit for a traveller (ours)',
  },
  'village-well': {
    microbial: true,
    salt: 'no',
    chemicals: 'unknown',
    turbidityNtu: 5,
    why: 'people drink it, so it is not salt; animals and latrines are near (ours)',
  },
  bore: {
    microbial: true,
    salt: 'unknown',
    chemicals: 'unknown',
    turbidityNtu: 5,
    why: 'bores and desert wells are often salty or hold minerals, which nobody can see (ours)',
  },
  spring: {
    microbial: true,
    salt: 'no',
    chemicals: 'unknown',
    turbidityNtu: 1,
    why: 'clear as it comes out, but animals drink there too (ours)',
  },
  river: {
    microbial: true,
    salt: 'no',
    chemicals: 'unknown',
    turbidityNtu: 50,
    why: 'open water takes up all that lives and flows upstream (ours)',
  },
  'rain-tank': {
    microbial: true,
    salt: 'no',
    chemicals: 'no',
    turbidityNtu: 5,
    why: 'roofs and gutters carry droppings and dust (ours)',
  },
  unknown: {
    microbial: true,
    salt: 'unknown',
    chemicals: 'unknown',
    turbidityNtu: 50,
    why: 'nothing is known of it, so the worst is taken (ours)',
  },
};

export const SOURCE_KINDS = Object.keys(HAZARDS) as SourceKind[];

/** Names in running text. */
export const SOURCE_WORDS: Record<SourceKind, string> = {
  'piped-tap': 'piped tap',
  'village-well': 'village well',
  bore: 'bore or desert well',
  spring: 'spring',
  river: 'river or lake',
  'rain-tank': 'rain tank',
  unknown: 'unknown source',
};
