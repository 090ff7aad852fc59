import { column } from './shared/columns.ts';

/** Words of the report of fuel use. Figures come in as they are set. */
export const FUEL_WORDS = {
  columns: {
    surface: column('surface'),
    way: column('way', 'km'),
    allowance: column('allowance', '%'),
    factor: column('factor', '× own rate'),
    from: column('from'),
    physics: column('physics', '× own rate'),
  },
  head: 'Fuel use',
  fullLoad: (ranges: string) => `a full load goes, at your rate: ${ranges}`,
  onRoute: (ranges: string) => `on this route: ${ranges}`,
  routeTakes: (low: string, typical: string, high: string) =>
    `the whole route takes ${low}, ${typical} or ${high}, the last of it:`,
  physicsOn: (surface: string, trust: string) => `physics on ${surface}: ${trust}`,
  load: ({ mass, observed, percent, factor }: Record<'mass' | 'observed' | 'percent' | 'factor', string>) =>
    `load: ${mass} kg against ${observed} kg observed, ${percent} % for 100 kg: × ${factor}`,
  notReckoned: 'not reckoned',
  climbs: (up: string, down: string, taken: string) => `climbs: ${up} m up, ${down} m down: ${taken}`,
  urea: (
    need: string,
    { tank, range, longest, places }: Record<'tank' | 'range' | 'longest', string> & { places: number },
  ) =>
    `urea solution: ${need} over the route, tank ${tank}, which goes ${range}; longest way without ${longest}; listed at ${places} places`,
  ranges: (toLastDrop: readonly string[], toReserve: readonly string[]) =>
    `${toLastDrop.join(', ')} to the last drop; ${toReserve.join(', ')} to the reserve (low, typical, high use)`,
  yourRig: 'your rig',
  ours: 'ours',
  between: (low: string, high: string) => `${low} to ${high}`,
};
