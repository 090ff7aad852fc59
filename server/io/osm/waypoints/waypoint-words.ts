/**
 * Words by which a GPX waypoint says that it is fuel, water or a camp. Symbols are those that GPX writers use by habit
 * (common practice, no source); words in other languages are from memory. A plain "water" says nothing of whether it
 * can be drunk, so it becomes a kind that does not count as drinking water by itself.
 */
export interface WaypointWord {
  /** Matched on whole words, case and accents aside. */
  words: readonly string[];
  /** The OSM tags that say the same. */
  tags: Readonly<Record<string, string>>;
  /** Also taken from a waypoint's name; words with other common meanings are left to symbol and type. */
  inNames: boolean;
}

/** In order: the first row that matches is taken, so the more telling ones come first. */
export const SUPPLY_WORDS: readonly WaypointWord[] = [
  {
    words: ['diesel', 'gasoil', 'gasoleo', 'gazole', 'gas oil', 'gasoil station'],
    tags: { amenity: 'fuel', 'fuel:diesel': 'yes' },
    inNames: true,
  },
  {
    words: [
      'gas station',
      'fuel',
      'fuel station',
      'filling station',
      'petrol',
      'petrol station',
      'service station',
      'tankstelle',
      'station service',
      'station essence',
      'gasolinera',
      'distributore',
      'bensinstation',
      'posto de combustivel',
      'заправка',
      'азс',
    ],
    tags: { amenity: 'fuel' },
    inNames: true,
  },
  {
    words: [
      'drinking water',
      'potable water',
      'water fountain',
      'trinkwasser',
      'eau potable',
      'agua potable',
      'acqua potabile',
      'drikkevann',
      'dricksvatten',
      'питьевая вода',
    ],
    tags: { amenity: 'drinking_water' },
    inNames: true,
  },
  { words: ['water point', 'water fill'], tags: { amenity: 'water_point' }, inNames: true },
  { words: ['water tap', 'tap', 'wasserhahn'], tags: { man_made: 'water_tap' }, inNames: true },
  {
    words: ['water well', 'well', 'borehole', 'bore', 'brunnen', 'puits', 'pozo', 'pozzo', 'колодец'],
    tags: { man_made: 'water_well' },
    inNames: true,
  },
  {
    words: ['spring', 'water source', 'quelle', 'source d eau', 'manantial', 'sorgente', 'родник'],
    tags: { natural: 'spring' },
    inNames: true,
  },
  {
    words: ['water tank', 'cistern', 'zisterne'],
    tags: { man_made: 'storage_tank', content: 'water' },
    inNames: true,
  },
  { words: ['waterhole', 'water hole'], tags: { natural: 'waterhole' }, inNames: true },
  {
    words: ['water', 'wasser', 'eau', 'agua', 'acqua', 'вода'],
    tags: { man_made: 'water_tap' },
    inNames: false,
  },
];

export const CAMP_WORDS: readonly string[] = [
  'camp',
  'camp site',
  'campsite',
  'campground',
  'camping',
  'bush camp',
  'wild camp',
  'bivouac',
  'bivvy',
  'bivi',
  'biwak',
  'night',
  'overnight',
  'tent',
  'lager',
  'nachtlager',
  'campamento',
];
