/** In what a reserve can be told, with the figure that each begins with. */
const SHARED_WAYS = [
  { key: 'litres', words: 'an amount', kind: 'volume', start: 20 },
  { key: 'fraction', words: 'a share of what the tanks give', kind: 'share', start: 0.2 },
] as const;
export const FUEL_WAYS = [
  { key: 'km', words: 'a distance', kind: 'distance', start: 100 },
  ...SHARED_WAYS,
] as const;
export const WATER_WAYS = [
  { key: 'days', words: 'days of drinking', kind: 'days', start: 2 },
  ...SHARED_WAYS,
] as const;
