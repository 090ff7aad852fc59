import type { WaterClass } from '../../../contract/common.ts';
import type { WaterGrade, WaterUseName, Work } from '../../../contract/crew.ts';
import type { PetSource } from '../../../core/phrases/rig/crew.ts';
import type { PlaceName } from '../../../core/phrases/said/supply-kinds.ts';
import type { Catalogue, Say } from '../../parts/catalogue.ts';
import { bare, figure, fixed, placeAt, rounded } from '../../parts/figures.ts';
import { joined, type Part, parts } from '../../parts/part.ts';
import { german } from '../shared/numbers.ts';
import { called } from '../shared/places.ts';
import { LEVEL_SOURCES, LEVEL_WORDS } from './defaults.ts';

/** What a water of a class is fit for. */
const FIT: Record<WaterClass, string> = {
  drinking: 'trinkbar',
  treatable: 'erst nach der Aufbereitung trinkbar',
  washing: 'nur zum Waschen geeignet',
  none: 'zu nichts geeignet',
};

/** Before "Arbeit", in the dative too where it stands after "bei". */
const WORK_WORDS: Record<Work, string> = { easy: 'leichter', moderate: 'mittelschwerer', hard: 'schwerer' };

const USES: Record<WaterUseName, string> = {
  drinking: 'Trinken',
  cooking: 'Kochen',
  'washing-up': 'Abwaschen',
  'teeth-and-hands': 'Zähne und Hände',
  pets: 'Tiere',
  washing: 'Waschen',
  shower: 'Dusche',
  vehicle: 'Fahrzeug',
  losses: 'Verluste',
  'osmosis-waste': 'Abwasser der Umkehrosmose',
};

const GRADES: Record<WaterGrade, string> = { drinking: 'Trinkqualität', washing: 'Waschqualität' };

const OWN = 'Ihre eigene Zahl';
const DOGS =
  '44 bis 66 ml je kg und Tag (Merck Veterinary Manual) und 112 ml × kg^0,75 (NRC 2006), das Weitere von beiden';
const PETS: Record<PetSource, string> = {
  dog: DOGS,
  'as-dog': `wie bei einem Hund (unsere Annahme): ${DOGS}`,
  own: OWN,
};

const lowered = ({ name, container }: { name: PlaceName; container: WaterClass }, say: Say): Part[] =>
  parts`Wasser von ${called(name, say)} macht alles, womit es sich mischt, und die Leitungen danach ${FIT[container]}, bis sie desinfiziert sind.`;

/** What the people of a rig should know of their water. */
export const CREW_CAUTIONS = {
  'drinking-below-survival': ({ path, leastL }) =>
    parts`${path}: weniger als ${figure(leastL, 'l')} zu trinken am Tag, das Mindeste zum Überleben bei mildem Wetter (Sphere Handbook). Trinkwasser niemals rationieren.`,
  'observed-below-need': ({ observedL, needL }) =>
    parts`Ihre eigene Zahl von ${rounded(observedL, 'l')} pro Tag liegt unter den ${rounded(needL, 'l')} in Trinkqualität, die die Besatzung nach ihren Angaben brauchen kann. Wurde sie bei solcher Hitze und solcher Arbeit beobachtet?`,
  'no-drinking-tank': () => parts`Alle festen Tanks sind zum Waschen bestimmt: keiner enthält Trinkwasser.`,
  'washing-at-source': () =>
    parts`Waschwasser wird nicht mitgeführt: es kommt aus Wasser, das Sie als unbedenklich für die Haut bezeichnet haben. Unbehandeltes Wasser kann Haut, Augen und Wunden schaden.`,
  'heat-unknown': () =>
    parts`Welche Hitze zu erwarten ist, wurde nicht angegeben: das Trinken ist für mildes Wetter gerechnet. Bei großer Hitze kann es sich verdoppeln.`,
  'wbgt-outside-range': ({ temperatureC, fromC, toC }) =>
    parts`WBGT wird auf ${rounded(temperatureC, '°C', 0)} geschätzt, außerhalb der ${bare(figure(fromC, '°C'))} bis ${figure(toC, '°C')}, für die die Schätzung gemacht ist.`,
  'intake-hour-limit': ({ litres, mostL }) =>
    parts`Die Arbeit kann bis zu ${rounded(litres, 'l')} in der Stunde kosten; ein Körper nimmt höchstens ${rounded(mostL, 'l')} auf. Im Schatten ruhen, nachts arbeiten. Das Wasser wird trotzdem mitgeführt.`,
  'intake-day-limit': ({ litres, mostL }) =>
    parts`Ein Mensch kann ${rounded(litres, 'l')} am Tag zu trinken brauchen; ein Körper nimmt höchstens ${rounded(mostL, 'l')} auf. In dieser Hitze nicht mehr arbeiten, oder nachts fahren: mehr als ${figure(12, 'l')} werden dafür nicht mitgeführt.`,
  'work-rest': ({ work, workMinutes, restMinutes }) =>
    parts`In dieser Hitze gehören bei ${WORK_WORDS[work]} Arbeit ${restMinutes} Minuten Ruhe zu je ${workMinutes} Minuten Arbeit (US Army TB MED 507, an die Hitze gewöhnte Menschen).`,
  'survival-days': ({ temperatureC, restingDays, walkingDays }) =>
    parts`Bei ${rounded(temperatureC, '°C', 0)} im Schatten leben Menschen ohne Wasser voraussichtlich etwa ${figure(restingDays, 'days')} in Ruhe, ${figure(walkingDays, 'days')}, wenn sie nachts gehen (Adolph, 1947: ruhende Männer; aus dem Gedächtnis). Beim Fahrzeug bleiben, im Schatten.`,
  'help-hours-unknown': ({ alarm, help }) => {
    const missing = [
      ...(alarm ? [] : ['zum Alarm (alarmHours)']),
      ...(help ? [] : ['zum Eintreffen von Hilfe (helpHours)']),
    ].join(' und bis ');
    return parts`Wie viele Stunden es bis ${missing} dauert, wurde nicht angegeben: die Wasserreserve reicht vielleicht nicht so lange.`;
  },
  'reserve-in-one-place': ({ loss, safeL, reserveL }, say) =>
    parts`Ein Leck, eine Pumpe oder ein Hahn kann ${say(loss)} leeren: dann bleiben, auch wenn alles voll war, ${rounded(safeL, 'l')} Trinkwasser, weniger als die Reserve von ${rounded(reserveL, 'l')}. Die Reserve getrennt aufbewahren, in Kanistern oder einem eigenen Tank.`,
  'heat-off-route': ({ atM }) =>
    parts`Die ab ${placeAt(atM)} angegebene Hitze liegt nach dem Ende der Route.`,
  'heat-without-crew': () =>
    parts`Es ist angegeben, wie heiß es hier ist, aber nicht, wer trinkt: dafür wird nicht mehr Wasser gerechnet. Die Besatzung angeben.`,
  'cans-kept-for-washing': () =>
    parts`Die vorhandenen Wasserkanister sind zum Waschen bestimmt: was an Trinkwasser fehlt, braucht andere.`,
  'start-grades-assumed': () =>
    parts`Welcher Tank am Anfang nicht voll ist, wurde nicht angegeben: der zum Waschen gilt als der vollste, das Schlechteste fürs Trinken.`,
  'water-lowered': lowered,
  'washing-source-not-passed': ({ id }) =>
    parts`Die Waschwasserstelle ${id} ist kein Wasser im Korridor der Route und wird weggelassen.`,
  'washing-source-unfit': ({ id }) =>
    parts`Die Waschwasserstelle ${id} ist nach ihren Tags zu nichts geeignet und wird weggelassen.`,
} satisfies Partial<Catalogue['cautions']>;

/** Labels and sources of water use. */
export const CREW_PHRASES = {
  'own-figure': () => parts`${OWN}`,
  'need-over-recovery': ({ feed }) =>
    parts`von der Umkehrosmose am Hahn weggeschüttet: ${rounded(feed, 'l', 2)} aus dem Tank für jeden Liter`,
  'beyond-a-body': ({ mostL }) =>
    parts`über die ${figure(mostL, 'l')} am Tag hinaus, die für einen Menschen mitgeführt werden`,
  'own-figure-for-all': () => parts`${OWN} für alle an Bord`,
  'level-sources': ({ levels, own, highOfOne }) => {
    const sources = levels.map((level) => parts`„${LEVEL_WORDS[level]}“: ${LEVEL_SOURCES[level]()}`);
    const told = own
      ? `${OWN}, wo angegeben (hoher Wert ${german(highOfOne)} × eine einzelne Zahl, unsere Annahme), sonst `
      : '';
    return parts`${told}${joined(sources, '; ')}`;
  },
  'first-of-washing': ({ litres }) => parts`die ersten ${figure(litres, 'l')} vom Waschen (unsere Annahme)`,
  'pets-source': ({ sources, heat }) =>
    parts`${sources.map((source) => PETS[source]).join('; ')}${heat ? '; durch Hitze erhöht wie bei ruhenden Menschen (unsere Annahme)' : ''}`,
  'split-of-own-figure': ({ of }, say) =>
    parts`${OWN} für alle an Bord, aufgeteilt wie die Teile der Besatzung (${say(of)})`,
  'heat-of-stretch': ({ temperatureC, wbgtC, fromM, toM, litresPerDay, addedPerDay }) => {
    const heat =
      wbgtC === null ? parts`${rounded(temperatureC ?? 0, '°C')}` : parts`WBGT ${rounded(wbgtC, '°C')}`;
    const stretch = parts`${heat} zwischen ${placeAt(fromM)} und ${placeAt(toM)}`;
    return addedPerDay === 0
      ? parts`${stretch}: nicht heißer als anderswo, also wird weder mehr noch weniger Wasser gerechnet`
      : parts`${stretch}: ${rounded(litresPerDay, 'l')} pro Tag, ${rounded(addedPerDay, 'l')} mehr als anderswo`;
  },
  'use-of-grade': ({ use, grade, source }, say) => parts`${USES[use]} (${GRADES[grade]}): ${say(source)}`,
  'drinking-at-rest-mild': () => parts`Trinken bei mildem Wetter in Ruhe`,
  'drinking-at-rest-in-heat': ({ factor, wbgtC }) =>
    parts`Trinken in Ruhe × ${fixed(factor, 'count', 2)} für WBGT ${fixed(wbgtC, '°C', 0)}`,
  'drinking-at-work': ({ hours, work, litresPerHour, people }) =>
    parts`${figure(hours, 'h')} bei ${WORK_WORDS[work]} Arbeit zu ${fixed(litresPerHour, 'l', 2)} je Stunde und Mensch, ${people} ${people === 1 ? 'Mensch' : 'Menschen'}`,
  'heat-source': ({ measured, fromC, toC }) => {
    const wbgt = measured
      ? parts`WBGT wie angegeben`
      : parts`WBGT geschätzt aus Temperatur, Feuchte, Sonne und Wind auf Meereshöhe (Liljegren et al. 2008, auf ein Grad genau am Gemessenen; ${bare(figure(fromC, '°C'))} bis ${figure(toC, '°C')}; heißer, wo kein Wind geht)`;
    return parts`${wbgt}; Aufnahme nach WBGT und Arbeit: US Army TB MED 507, ein durchschnittlicher, an die Hitze gewöhnter Mensch, ± 1/4 US quart je Stunde; in Ruhe bis zum Doppelten in der heißesten Stufe (US FEMA), dazwischen und darüber hinaus eine gerade Linie (unsere Annahme)`;
  },
  'tank-lost': ({ names }) =>
    parts`${names.length > 1 ? 'die verbundenen Tanks' : 'den Tank'} ${names.map((name) => `„${name}“`).join(', ')}`,
  'can-lost': () => parts`einen Kanister`,
  'hours-to-help': ({ alarmHours, helpHours }) =>
    parts`${figure(alarmHours, 'h')} bis zum Alarm und ${figure(helpHours, 'h')}, bis Hilfe da ist`,
  'water-lowered-by': lowered,
  'treated-at': ({ at }) => {
    if (at === null) return parts`Keine Aufbereitung: nur als trinkbar angegebenes Wasser wird eingefüllt.`;
    return at === 'filling'
      ? parts`Beim Füllen aufbereitet: was in den Tanks ist, ist trinkbar, solange nichts Unbehandeltes hineinläuft.`
      : parts`Am Hahn aufbereitet: die Tanks enthalten unbehandeltes Wasser, und nur Hähne nach der Anlage geben Trinkwasser.`;
  },
} satisfies Partial<Catalogue['phrases']>;
