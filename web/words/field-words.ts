import type { Parts } from '../../server/contract/common.ts';
import type { UnitSystem } from '../units/units.ts';
import { setIn } from './said.ts';

/** Plain words for the paths of rig and trip, for assumptions and refusals. */
const WORDS: Record<string, string> = {
  '/name': 'Name',
  '/fuel/kind': 'Fuel',
  '/fuel/litresPer100Km': 'Fuel use',
  '/fuel/litresPer100Km/low': 'Fuel use at best',
  '/fuel/litresPer100Km/typical': 'Usual fuel use',
  '/fuel/litresPer100Km/high': 'Fuel use at worst',
  '/fuel/tanks': 'Fuel tanks',
  '/fuel/cans': 'Fuel cans',
  '/fuel/reserve': 'Fuel reserve',
  '/water/litresPerDay': 'Water use',
  '/water/litresPerDay/low': 'Water use at best',
  '/water/litresPerDay/typical': 'Usual water use',
  '/water/litresPerDay/high': 'Water use at worst',
  '/water/tanks': 'Water tanks',
  '/water/cans': 'Water cans',
  '/water/reserve': 'Water reserve',
  '/pace/hoursPerDay': 'Hours of driving a day',
  '/pace/kmPerHour': 'Pace',
  '/pace/kmPerHour/slow': 'Pace at the slow end',
  '/pace/kmPerHour/typical': 'Usual pace',
  '/pace/kmPerHour/fast': 'Pace at the fast end',
  '/fuel/observed/surface': 'Surface on which the use was observed',
  '/fuel/loadPercentPer100Kg': 'Rise of use with load',
  '/fuel/climb/efficiency': "Share of the fuel's energy that lifts",
  '/fuel/climb/giveBack': 'Share given back downhill',
  '/fuel/climb/thresholdM': 'Rises taken for noise',
  '/fuel/physics/dragAreaM2': 'Drag area',
  '/fuel/cans/emptyKg': 'Mass of an empty fuel can',
  '/water/cans/emptyKg': 'Mass of an empty water can',
  '/vehicle/includes': 'What the kerb mass includes',
  '/vehicle/kerbKg': 'Kerb mass',
  '/vehicle/axleKg': 'Axle loads at kerb mass',
  '/vehicle/wheelbaseM': 'Wheelbase',
  '/vehicle/trackM': 'Track',
  '/vehicle/cgHeightM': 'Height of the centre of gravity',
  '/vehicle/cgSideM': 'Centre of gravity, right of the middle',
  '/vehicle/people': 'People in the vehicle',
  '/vehicle/permitted/totalKg': 'Permitted mass in all',
  '/vehicle/permitted/frontKg': 'Permitted load of the front axle',
  '/vehicle/permitted/rearKg': 'Permitted load of the rear axle',
  '/equipment/ropeAndBucket': 'Rope and bucket',
  '/crew/heat/windKmPerHour': 'Wind',
  '/aboard': 'Aboard at the start',
  '/onward': 'Onward from the end',
  '/corridorKm': 'Corridor either side',
  '/counting/fuel': 'Fuel is relied on from',
  '/counting/water': 'Water is relied on from',
  '/allowancePercent': 'Allowance for winding',
  '/detourFactor': 'Detour factor',
  '/part': 'Part of the file',
  '/departure': 'Departure',
  '/sparseStepKm': 'Straight step taken for a sketch',
  '/routeIsRoad': 'Straight steps are straight roads',
  '/campDays': 'Days at each camp',
};

const ENTRIES: Record<string, string> = {
  'fuel/tanks': 'fuel tank',
  'water/tanks': 'water tank',
  'vehicle/people': 'person',
  'vehicle/pets': 'pet',
  'vehicle/gear': 'thing of the gear',
};

/** The words for a path that have a figure: set in the reader's units. */
const WITH_FIGURES: Readonly<Record<string, Parts>> = {
  '/fuel/loadPercentPer100Kg': [{ text: 'Use for each ' }, { figure: 100, unit: 'kg' }, { text: ' more' }],
};

/** The words for a path. */
export function fieldWords(path: string, units: UnitSystem): string {
  const parts = WITH_FIGURES[path];
  return parts === undefined ? pathWords(path) : setIn(units, parts);
}

/** "/water/tanks/1/position" as "place of water tank 2": several of them stand in one sentence. */
function placeWords(path: string): string | null {
  const [, list, index] = /^\/(\w+\/\w+)(?:\/(\d+))?\/position$/.exec(path) ?? [];
  if (list === 'fuel/cans' || list === 'water/cans') return `place of the ${list.replace('/', ' ')}`;
  if (list === undefined || index === undefined || ENTRIES[list] === undefined) return null;
  return `place of ${ENTRIES[list]} ${Number(index) + 1}`;
}

/** "/fuel/tanks/0/litres" as "fuel, tanks 1, litres": for places that have no words of their own. */
function pathWords(path: string): string {
  const known = WORDS[path] ?? placeWords(path);
  if (known !== null) return known;
  const words = path
    .split('/')
    .slice(1)
    .map((key) =>
      /^\d+$/.test(key)
        ? String(Number(key) + 1)
        : key
            .replace(/(?<=[a-z])(M|Kg)$/, '')
            .replace(/[A-Z0-9]+/g, ' $&')
            .toLowerCase(),
    );
  return words.join(', ').replace(/, (\d+)/g, ' $1');
}

/** A refusal's text with the paths of rig and trip in words, as people know them from the form. */
export const withoutPaths = (text: string): string =>
  text.replace(/(?<![\w.:/])\/[a-zA-Z][\w]*(\/\w+)*/g, (path) => pathWords(path));
