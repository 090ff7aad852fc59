import type { UnusualUnit } from '../../core/phrases/misfits.ts';
import type { MisfitSayings } from '../parts/catalogue.ts';
import { metricText } from '../parts/metric.ts';
import { NOTE_PHRASES } from './notes.ts';

const inOrder = (path: string) => `Put the three numbers of ${path} in order`;

const UNUSUAL_UNITS: Record<UnusualUnit, string> = {
  'l/100 km': 'l/100 km',
  'km/h': 'km/h',
  kg: 'kg',
  height: 'm above the ground',
  'driving-hours': 'hours of driving a day',
  'surface-factor': 'times the use on a sealed road',
};

/** Why a rig or a trip cannot be used. Metric, as the files are. */
export const MISFITS: MisfitSayings = {
  'range-order': ({ low, typical, high }, path) => ({
    came: `low ${low}, typical ${typical}, high ${high}`,
    expected: 'low <= typical <= high',
    remedy: inOrder(path),
  }),
  'pace-order': ({ slow, typical, fast }, path) => ({
    came: `slow ${slow}, typical ${typical}, fast ${fast}`,
    expected: 'slow <= typical <= fast',
    remedy: inOrder(path),
  }),
  'tank-undrawable': ({ unusableLitres, litres, fillPercent }) => ({
    came: `${unusableLitres} l that cannot be used in a tank of ${litres} l${fillPercent === null ? '' : ` filled to ${fillPercent} %`}`,
    expected: 'less than the tank holds',
    remedy: 'Give the litres that stay in the tank when the pump draws air, or leave the key out',
  }),
  unusual: ({ value, least, most, unit }, path) => ({
    came: `${value} ${UNUSUAL_UNITS[unit]}`,
    expected: `usually ${least === 0 ? `up to ${most}` : `${least} to ${most}`} ${UNUSUAL_UNITS[unit]}`,
    remedy: `Correct it, or, where it is meant so, add "${path}" to the list "sure" at the top of the file`,
  }),
  'bases-several': ({ told, bases }) => ({
    came: told.join(' and '),
    expected: `one of ${bases.join(', ')} (shareOfNeed may stand beside it)`,
    remedy: `Keep one of ${told.join(' and ')}`,
  }),

  'engine-fuel': ({ value, kind, kinds }, path) => ({
    came: `${value} for an engine that burns ${kind}`,
    expected: `a fuel of kind ${kinds.join(' or ')}`,
    remedy: `Correct /fuel/kind, or leave ${path} out`,
  }),
  'engine-hours': ({ idling, airConditioning }) => ({
    came: `${idling} h of idling and ${airConditioning} h of standing with air conditioning on in a day`,
    expected: 'not more than 24 h together',
    remedy: 'Count each hour of the engine once: idling without, or standing with air conditioning on',
  }),
  'urea-untold': () => ({
    came: 'a urea tank without what is used',
    expected: 'percentOfFuel or litresPer1000Km',
    remedy: 'Give percentOfFuel as in the handbook: most engines take 3 to 6 % of their fuel',
  }),
  'can-filling': ({ fillPercent }) => ({
    came: `${fillPercent} %`,
    expected: 'percent of what the can holds, 1 to 100',
    remedy: 'Write 95 for a can that is filled to 95 %',
  }),

  'use-untold': () => ({
    came: 'nothing',
    expected:
      'a number above 0 and at most 1000, in litres a day or a group of keys (low, typical, high), or a crew',
    remedy: 'Add "litresPerDay", or tell in /crew who drinks from the tanks',
  }),
  'grade-without-crew': () => ({
    came: 'a container kept for one grade',
    expected: 'a crew beside it, to tell how much of each grade is used',
    remedy: 'Add /crew with its people, or leave the grade out',
  }),
  'observed-twice': () => ({
    came: 'an observed figure beside /water/litresPerDay',
    expected: 'one of the two: both are litres a day of all aboard as observed',
    remedy: 'Keep /crew/observedLitresPerDay and leave /water/litresPerDay out',
  }),
  'drinking-nothing': (_, path) => ({
    came: '0 l a day',
    expected: 'what the person drinks, above 0',
    remedy: `Give litres a day in ${path}, or leave it out for that of the level`,
  }),
  'heat-twice': ({ key }) => ({
    came: `wbgtC and ${key}`,
    expected: 'WBGT, or temperatureC with humidityPercent, sun and wind',
    remedy: 'Keep wbgtC if it was measured or forecast, else leave it out',
  }),
  'heat-incomplete': ({ temperature, humidity }) => ({
    came: temperature
      ? 'temperatureC without humidityPercent'
      : humidity
        ? 'humidityPercent without temperatureC'
        : 'neither wbgtC nor temperatureC',
    expected: 'wbgtC, or temperatureC with humidityPercent',
    remedy: 'Add what is missing; in a dry desert by day the humidity is often 10 to 25 %',
  }),

  'stage-key': ({ key, kind, kinds }) => ({
    came: `${key} on a stage of kind ${kind}`,
    expected: `it on ${kinds.join(', ')} only`,
    remedy: `Leave ${key} out or correct the kind`,
  }),
  'germs-twice': ({ germs }) => ({
    came: `both logs and percent for ${germs}`,
    expected: 'one of the two',
    remedy: 'Keep what the maker states',
  }),
  'pump-rising': ({ ratedKPa, noFlowKPa }) => ({
    came: `${ratedKPa} kPa at the rated flow, ${noFlowKPa} kPa at none`,
    expected: 'less pressure at the rated flow than at none',
    remedy: "Take both figures from the pump's sheet",
  }),
  'stage-missing': ({ afterStage, stages }) => ({
    came: `after stage ${afterStage}`,
    expected: `0 to ${stages}, the number of stages`,
    remedy: 'Give the number of the last stage before it, 0 for none',
  }),
  'target-above-maximum': ({ log, germs, maximumLog }) => ({
    came: `a target of ${log} log for ${germs}, a maximum of ${maximumLog}`,
    expected: 'a maximum not below the target',
    remedy: 'Raise the maximum or ask for less',
  }),

  'kerb-below-contents': ({ kerbKg, contentsKg }) => ({
    came: `${kerbKg} kg, of which fuel, water and driver are ${Math.round(contentsKg)} kg`,
    expected: 'more than what the kerb mass includes',
    remedy: 'Correct kerbKg or the tanks, or give emptyKg for tanks that were fitted later',
  }),
  'axles-off-kerb': ({ front, rear, kerbKg, toleranceKg }) => ({
    came: `front ${front} kg and rear ${rear} kg, together ${front + rear} kg`,
    expected: `the kerb mass of ${kerbKg} kg, give or take ${Math.round(toleranceKg)} kg`,
    remedy: 'Give the axle loads as weighed at kerb mass, or correct kerbKg',
  }),
  'permitted-below-kerb': ({ limitKg, kg }, path) => ({
    came: `${limitKg} kg, while ${kg} kg rest there at kerb mass`,
    expected: 'at least what the vehicle weighs at kerb mass',
    remedy: `Correct ${path} or the mass at kerb`,
  }),
  'height-twice': () => ({
    came: 'cgHeightM and axleLift',
    expected: 'one of the two',
    remedy: 'Keep cgHeightM if the height is known, else axleLift',
  }),
  'lift-without-axles': () => ({
    came: 'axleLift without axleKg and wheelbaseM',
    expected: 'axle loads and wheelbase beside it',
    remedy: 'Give axleKg and wheelbaseM, or leave axleLift out',
  }),
  'cabin-inside-out': ({ fromM, toM, floorHeightM, roofHeightM }) => ({
    came: `from ${fromM} to ${toM} m, floor ${floorHeightM}, roof ${roofHeightM} m`,
    expected: 'fromM before toM and the floor below the roof',
    remedy: 'Give metres behind the front axle and above the ground',
  }),
  'place-beyond-length': ({ behindFrontAxleM, aheadM, lastM, wheelbaseM }) => ({
    came: `${behindFrontAxleM} m behind the front axle`,
    expected: `between ${-aheadM} and ${Number(lastM.toFixed(2))} m on a vehicle with a wheelbase of ${wheelbaseM} m`,
    remedy: 'Measure from the front axle rearward, in metres',
  }),
  'place-beyond-width': ({ sideM, mostM, trackM }) => ({
    came: `${sideM} m from the middle`,
    expected: `at most ${Number(mostM.toFixed(2))} m with a track of ${trackM} m`,
    remedy: 'Measure from the middle of the vehicle, left negative, in metres',
  }),

  'aboard-twice': ({ litres, sinceFill }) => ({
    came: `${litres} and ${sinceFill}`,
    expected: 'one of the two',
    remedy: `Keep ${litres} if you know the litres, else ${sinceFill}`,
  }),
  'aboard-above-tanks': ({ litres, drawableL }) => ({
    came: `${litres} l aboard`,
    expected: `at most the ${Number(drawableL.toFixed(3))} l that the rig's fixed tanks give`,
    remedy:
      'Correct the litres aboard or the tanks of the rig (what is in cans is not reckoned at the start)',
  }),
  'date-impossible': ({ date }, path) => ({
    came: `"${date}"`,
    expected: 'a day that the calendar has',
    remedy: `Correct ${path}`,
  }),
  'stretch-backward': ({ fromKm, toKm }) => ({
    came: `from km ${fromKm} to km ${toKm}`,
    expected: 'fromKm before toKm',
    remedy: 'Give route km in the direction of travel',
  }),
  'box-inside-out': ({ bbox }, path) => ({
    came: `[${bbox.join(', ')}]`,
    expected: '[west, south, east, north] in degrees with south below north',
    remedy: `Correct ${path}`,
  }),
  'stop-twice': ({ id }) => ({
    came: `${id} once more`,
    expected: 'each stop once',
    remedy: 'Put all that is known of a stop into one entry',
  }),
  'stop-passed-by': ({ id }) => ({
    came: `${id} both in mustStop and in passBy`,
    expected: 'one of them',
    remedy: 'Take it out of one of the two lists',
  }),
  'own-point-twice': ({ id }) => ({
    came: `${id} once more`,
    expected: 'each point of your own once',
    remedy: 'Give each an id of its own',
  }),
  'own-point-gives-nothing': ({ id }) => ({
    came: `${id} without fuels and without a grade of water`,
    expected: 'fuels, grade, or both',
    remedy: 'Say what is to be had there: fuels: [diesel], or grade: drinking',
  }),
  'place-unreadable': ({ text, fault }) => ({
    came: `"${text}": ${metricText(NOTE_PHRASES[fault.phrase](fault.facts as never))}`,
    expected: `latitude and longitude like -33.8683, 84.2067 or 33°52.1'S 84°12.4'E`,
    remedy: 'Write them in one of these forms, with a point before decimals',
  }),
  'days-backward': ({ from, until }) => ({
    came: `from ${from} until ${until}`,
    expected: 'a last day on or after the first',
    remedy: 'Put the two days in order',
  }),
  'correction-empty': ({ id }) => ({
    came: `a correction of ${id} that changes nothing`,
    expected: 'fuels, grade, openingHours or phone',
    remedy: 'Say what the map has wrong, or take the entry out',
  }),
};
