import { GERM_CLASSES, type Logs, type SourceKind } from '../../../contract/treatment.ts';
import type { FillingWay, WaterPhrases } from '../../../core/phrases/rig/treatment-waters.ts';
import type { Sayings } from '../../parts/catalogue.ts';
import { rounded } from '../../parts/figures.ts';
import { joined, type Part, parts } from '../../parts/part.ts';

/** In running text. */
const SOURCE_NAMES: Record<SourceKind, string> = {
  'piped-tap': 'piped tap',
  'village-well': 'village well',
  bore: 'bore or desert well',
  spring: 'spring',
  river: 'river or lake',
  'rain-tank': 'rain tank',
  unknown: 'unknown source',
};

const EXPECTED: Record<SourceKind, string> = {
  'piped-tap':
    'pipes leak and tanks on the way stand open: fit for those who live there is not fit for a traveller (ours)',
  'village-well': 'people drink it, so it is not salt; animals and latrines are near (ours)',
  bore: 'bores and desert wells are often salty or hold minerals, which nobody can see (ours)',
  spring: 'clear as it comes out, but animals drink there too (ours)',
  river: 'open water takes up all that lives and flows upstream (ours)',
  'rain-tank': 'roofs and gutters carry droppings and dust (ours)',
  unknown: 'nothing is known of it, so the worst is taken (ours)',
};

const TREATED_AT = { filling: 'on filling', tap: 'at the tap' } as const;

const FILLED_HOW: Record<FillingWay, string> = { noted: 'as noted', 'rope-and-bucket': 'rope and bucket' };

/** "bacteria 6, viruses 4, protozoa 3", rounded for people. */
export const logsParts = (logs: Logs): Part[] =>
  joined(
    GERM_CLASSES.map((germs) => parts`${germs} ${rounded(logs[germs], 'count', 2)}`),
    ', ',
  );

/** What is expected of waters, and what a treatment line makes of them. */
export const WATER_PHRASES: Sayings<WaterPhrases> = {
  'expected-of': ({ kind }) => parts`${EXPECTED[kind]}`,
  'own-figures': () => parts`your own figures in part or in whole`,
  'own-words': ({ words }) => parts`${words}`,
  'note-ahead': ({ on }) => parts`the note of ${on} lies after the day judged for`,
  'note-too-old': ({ on, days }) => parts`the note of ${on} is older than ${days} days`,
  'stage-clogs': ({ stage, why }, say) => parts`${stage}: ${say(why)}`,
  'stage-counts-for-nothing': ({ stage, why }, say) => parts`${stage} counts for nothing: ${say(why)}`,
  'short-of-target': ({ lacks, target, logs }) => {
    const missing = lacks.map(({ germs, log }) => parts`${rounded(log, 'count', 2)} log of ${germs}`);
    return parts`${joined(missing, ', ')} short of the target ${target} (reaches ${logsParts(logs)})`;
  },
  'salt-not-known': () => parts`salt not known: have it tested and note the date`,
  'salt-stays': () => parts`salt, which only reverse osmosis takes out`,
  'salinity-not-told': () =>
    parts`how salt it is was not told: note mg/l or conductivity, for reverse osmosis to be reckoned with`,
  'osmosis-pump-untold': () => parts`the pressure of the pump before the reverse osmosis was not told`,
  'osmosis-too-weak': ({ tdsMgPerLitre, osmoticKPa, pumpKPa }) =>
    parts`salt of ${rounded(tdsMgPerLitre, 'count', 0)} mg/l holds with ${rounded(osmoticKPa, 'count', 0)} kPa (van ’t Hoff) against ${rounded(pumpKPa, 'count', 0)} kPa of the pump: nothing goes through the membrane`,
  'osmosis-strong-enough': ({ tdsMgPerLitre, osmoticKPa, pumpKPa }) =>
    parts`salt of ${rounded(tdsMgPerLitre, 'count', 0)} mg/l holds with ${rounded(osmoticKPa, 'count', 0)} kPa (van ’t Hoff), the pump has ${rounded(pumpKPa, 'count', 0)} kPa`,
  'chemicals-stay': () => parts`chemicals, which only reverse osmosis takes out`,
  'treats-too-little': ({ givesLPerDay, drunkLPerDay }) =>
    parts`it gives ${rounded(givesLPerDay, 'l')} a day, of which up to ${rounded(drunkLPerDay, 'l')} are drunk`,
  'chemicals-not-known': () => parts`chemicals are not known, and this line takes out none`,
  'taken-as': ({ kind, logs, at }) =>
    parts`taken as ${SOURCE_NAMES[kind]}, ${logsParts(logs)} log, ${TREATED_AT[at]}`,
  'filled-in': ({ litres, minutes, lPerMin, how }) =>
    parts`${rounded(litres, 'l')} in about ${rounded(Math.ceil(minutes), 'min')} at ${rounded(lPerMin, 'l')}/min (${FILLED_HOW[how]})`,
};
