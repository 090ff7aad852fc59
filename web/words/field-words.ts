import type { Parts } from '../../server/contract/common.ts';
import { t } from '../language/t.ts';
import type { UnitSystem } from '../units/units.ts';
import { setIn } from './said.ts';

/** Plain words for the paths of rig and trip, for assumptions and refusals. */
const WORDS: Record<string, string> = {
  '/name': t('Name'),
  '/fuel/kind': t('Fuel'),
  '/fuel/litresPer100Km': t('Fuel use'),
  '/fuel/litresPer100Km/low': t('Fuel use at best'),
  '/fuel/litresPer100Km/typical': t('Usual fuel use'),
  '/fuel/litresPer100Km/high': t('Fuel use at worst'),
  '/fuel/tanks': t('Fuel tanks'),
  '/fuel/cans': t('Fuel cans'),
  '/fuel/reserve': t('Fuel reserve'),
  '/water/litresPerDay': t('Water use'),
  '/water/litresPerDay/low': t('Water use at best'),
  '/water/litresPerDay/typical': t('Usual water use'),
  '/water/litresPerDay/high': t('Water use at worst'),
  '/water/tanks': t('Water tanks'),
  '/water/cans': t('Water cans'),
  '/water/reserve': t('Water reserve'),
  '/pace/hoursPerDay': t('Hours of driving a day'),
  '/pace/kmPerHour': t('Pace'),
  '/pace/kmPerHour/slow': t('Pace at the slow end'),
  '/pace/kmPerHour/typical': t('Usual pace'),
  '/pace/kmPerHour/fast': t('Pace at the fast end'),
  '/fuel/observed/surface': t('Surface on which the use was observed'),
  '/fuel/loadPercentPer100Kg': t('Rise of use with load'),
  '/fuel/climb/efficiency': t("Share of the fuel's energy that lifts"),
  '/fuel/climb/giveBack': t('Share given back downhill'),
  '/fuel/climb/thresholdM': t('Rises taken for noise'),
  '/fuel/physics/dragAreaM2': t('Drag area'),
  '/fuel/cans/emptyKg': t('Mass of an empty fuel can'),
  '/water/cans/emptyKg': t('Mass of an empty water can'),
  '/vehicle/includes': t('What the kerb mass includes'),
  '/vehicle/kerbKg': t('Kerb mass'),
  '/vehicle/axleKg': t('Axle loads at kerb mass'),
  '/vehicle/wheelbaseM': t('Wheelbase'),
  '/vehicle/trackM': t('Track'),
  '/vehicle/cgHeightM': t('Height of the centre of gravity'),
  '/vehicle/cgSideM': t('Centre of gravity, right of the middle'),
  '/vehicle/people': t('People in the vehicle'),
  '/vehicle/permitted/totalKg': t('Permitted mass in all'),
  '/vehicle/permitted/frontKg': t('Permitted load of the front axle'),
  '/vehicle/permitted/rearKg': t('Permitted load of the rear axle'),
  '/equipment/ropeAndBucket': t('Rope and bucket'),
  '/crew/heat/windKmPerHour': t('Wind'),
  '/aboard': t('Aboard at the start'),
  '/onward': t('Onward from the end'),
  '/corridorKm': t('Corridor either side'),
  '/counting/fuel': t('Fuel is relied on from'),
  '/counting/water': t('Water is relied on from'),
  '/allowancePercent': t('Allowance for winding'),
  '/detourFactor': t('Detour factor'),
  '/part': t('Part of the file'),
  '/departure': t('Departure'),
  '/sparseStepKm': t('Straight step taken for a sketch'),
  '/routeIsRoad': t('Straight steps are straight roads'),
  '/campDays': t('Days at each camp'),
};

const ENTRIES: Record<string, string> = {
  'fuel/tanks': t('fuel tank'),
  'water/tanks': t('water tank'),
  'vehicle/people': t('person'),
  'vehicle/pets': t('pet'),
  'vehicle/gear': t('thing of the gear'),
};

/** The words for a path that have a figure: set in the reader's units. */
const WITH_FIGURES: Readonly<Record<string, Parts>> = {
  '/fuel/loadPercentPer100Kg': [
    { text: t('Use for each ') },
    { figure: 100, unit: 'kg' },
    { text: t(' more') },
  ],
};

/** The words for a path. */
export function fieldWords(path: string, units: UnitSystem): string {
  const parts = WITH_FIGURES[path];
  return parts === undefined ? pathWords(path) : setIn(units, parts);
}

/** "/water/tanks/1/position" as "place of water tank 2": several of them stand in one sentence. */
function placeWords(path: string): string | null {
  const [, list, index] = /^\/(\w+\/\w+)(?:\/(\d+))?\/position$/.exec(path) ?? [];
  if (list === 'fuel/cans' || list === 'water/cans') return t`place of the ${list.replace('/', ' ')}`;
  if (list === undefined || index === undefined || ENTRIES[list] === undefined) return null;
  return t`place of ${ENTRIES[list]} ${Number(index) + 1}`;
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
