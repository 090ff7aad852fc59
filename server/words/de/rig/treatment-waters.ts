import { GERM_CLASSES, type Logs, type SourceKind } from '../../../contract/treatment.ts';
import type { FillingWay, WaterPhrases } from '../../../core/phrases/rig/treatment-waters.ts';
import type { Sayings } from '../../parts/catalogue.ts';
import { rounded } from '../../parts/figures.ts';
import { joined, type Part, parts } from '../../parts/part.ts';
import { GERMS, targetWords } from './germs.ts';

/** In running text. */
const SOURCE_NAMES: Record<SourceKind, string> = {
  'piped-tap': 'Leitungshahn',
  'village-well': 'Dorfbrunnen',
  bore: 'Bohrung oder Wüstenbrunnen',
  spring: 'Quelle',
  river: 'Fluss oder See',
  'rain-tank': 'Regenwassertank',
  unknown: 'unbekannte Quelle',
};

const EXPECTED: Record<SourceKind, string> = {
  'piped-tap':
    'Leitungen lecken, und Behälter unterwegs stehen offen: was für die Einheimischen trinkbar ist, ist es nicht für Reisende (unsere Annahme)',
  'village-well':
    'Menschen trinken daraus, also ist es nicht salzig; Tiere und Latrinen sind nahe (unsere Annahme)',
  bore: 'Bohrungen und Wüstenbrunnen sind oft salzig oder enthalten Mineralien, die niemand sieht (unsere Annahme)',
  spring: 'klar, wie sie austritt, aber auch Tiere trinken dort (unsere Annahme)',
  river: 'offenes Wasser nimmt alles auf, was stromauf lebt und hineinfließt (unsere Annahme)',
  'rain-tank': 'Dächer und Rinnen tragen Kot und Staub (unsere Annahme)',
  unknown: 'nichts ist darüber bekannt, also gilt das Schlimmste (unsere Annahme)',
};

const TREATED_AT = { filling: 'beim Füllen', tap: 'am Hahn' } as const;

const FILLED_HOW: Record<FillingWay, string> = { noted: 'wie vermerkt', 'rope-and-bucket': 'Seil und Eimer' };

/** "Bakterien 6, Viren 4, Protozoen 3", rounded for people. */
export const logsParts = (logs: Logs): Part[] =>
  joined(
    GERM_CLASSES.map((germs) => parts`${GERMS[germs]} ${rounded(logs[germs], 'count', 2)}`),
    ', ',
  );

/** What is expected of waters, and what a treatment line makes of them. */
export const WATER_PHRASES: Sayings<WaterPhrases> = {
  'expected-of': ({ kind }) => parts`${EXPECTED[kind]}`,
  'own-figures': () => parts`ganz oder zum Teil Ihre eigenen Zahlen`,
  'own-words': ({ words }) => parts`${words}`,
  'note-ahead': ({ on }) => parts`der Vermerk vom ${on} liegt nach dem beurteilten Tag`,
  'note-too-old': ({ on, days }) => parts`der Vermerk vom ${on} ist älter als ${days} Tage`,
  'stage-clogs': ({ stage, why }, say) => parts`${stage}: ${say(why)}`,
  'stage-counts-for-nothing': ({ stage, why }, say) => parts`${stage} zählt nicht: ${say(why)}`,
  'short-of-target': ({ lacks, target, logs }) => {
    const missing = lacks.map(({ germs, log }) => parts`${rounded(log, 'count', 2)} log ${GERMS[germs]}`);
    return parts`${joined(missing, ', ')} fehlen zum Ziel ${targetWords(target)} (erreicht ${logsParts(logs)})`;
  },
  'salt-not-known': () => parts`Salz nicht bekannt: prüfen lassen und das Datum vermerken`,
  'salt-stays': () => parts`Salz, das nur Umkehrosmose herausnimmt`,
  'salinity-not-told': () =>
    parts`wie salzig es ist, wurde nicht angegeben: mg/l oder Leitfähigkeit vermerken, damit mit Umkehrosmose gerechnet werden kann`,
  'osmosis-pump-untold': () => parts`der Druck der Pumpe vor der Umkehrosmose wurde nicht angegeben`,
  'osmosis-too-weak': ({ tdsMgPerLitre, osmoticKPa, pumpKPa }) =>
    parts`Salz von ${rounded(tdsMgPerLitre, 'count', 0)} mg/l hält mit ${rounded(osmoticKPa, 'count', 0)} kPa (van ’t Hoff) gegen die ${rounded(pumpKPa, 'count', 0)} kPa der Pumpe: nichts geht durch die Membran`,
  'osmosis-strong-enough': ({ tdsMgPerLitre, osmoticKPa, pumpKPa }) =>
    parts`Salz von ${rounded(tdsMgPerLitre, 'count', 0)} mg/l hält mit ${rounded(osmoticKPa, 'count', 0)} kPa (van ’t Hoff), die Pumpe hat ${rounded(pumpKPa, 'count', 0)} kPa`,
  'chemicals-stay': () => parts`Chemikalien, die nur Umkehrosmose herausnimmt`,
  'treats-too-little': ({ givesLPerDay, drunkLPerDay }) =>
    parts`sie gibt ${rounded(givesLPerDay, 'l')} pro Tag, von denen bis zu ${rounded(drunkLPerDay, 'l')} getrunken werden`,
  'chemicals-not-known': () =>
    parts`ob Chemikalien darin sind, ist nicht bekannt, und diese Anlage nimmt keine heraus`,
  'taken-as': ({ kind, logs, at }) =>
    parts`genommen als ${SOURCE_NAMES[kind]}, ${logsParts(logs)} log, ${TREATED_AT[at]}`,
  'filled-in': ({ litres, minutes, lPerMin, how }) =>
    parts`${rounded(litres, 'l')} in etwa ${rounded(Math.ceil(minutes), 'min')} bei ${rounded(lPerMin, 'l')}/min (${FILLED_HOW[how]})`,
};
