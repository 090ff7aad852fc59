import type { UnusualUnit } from '../../core/phrases/misfits.ts';
import type { MisfitSayings } from '../parts/catalogue.ts';
import { metricText } from '../parts/metric.ts';
import { NOTE_PHRASES } from './notes.ts';
import { GERMS, STAGES } from './rig/germs.ts';
import { german, listed } from './shared/numbers.ts';
import { FUEL_WORDS } from './shared/words.ts';

const inOrder = (path: string) => `Die drei Zahlen von ${path} in die Reihenfolge bringen`;

const UNUSUAL_UNITS: Record<UnusualUnit, string> = {
  'l/100 km': 'l/100 km',
  'km/h': 'km/h',
  kg: 'kg',
  height: 'm über dem Boden',
  'driving-hours': 'Fahrstunden am Tag',
  'surface-factor': 'mal so viel wie auf befestigter Straße',
};

/** Why a rig or a trip cannot be used. Metric, as the files are; keys as they stand there. */
export const MISFITS: MisfitSayings = {
  'range-order': ({ low, typical, high }, path) => ({
    came: `low ${german(low)}, typical ${german(typical)}, high ${german(high)}`,
    expected: 'low <= typical <= high',
    remedy: inOrder(path),
  }),
  'pace-order': ({ slow, typical, fast }, path) => ({
    came: `slow ${german(slow)}, typical ${german(typical)}, fast ${german(fast)}`,
    expected: 'slow <= typical <= fast',
    remedy: inOrder(path),
  }),
  'tank-undrawable': ({ unusableLitres, litres, fillPercent }) => ({
    came: `${german(unusableLitres)} l, die nicht nutzbar sind, in einem Tank von ${german(litres)} l${fillPercent === null ? '' : `, gefüllt bis ${german(fillPercent)} %`}`,
    expected: 'weniger, als der Tank enthält',
    remedy: 'Die Liter angeben, die im Tank bleiben, wenn die Pumpe Luft zieht, oder den Schlüssel weglassen',
  }),
  unusual: ({ value, least, most, unit }, path) => ({
    came: `${german(value)} ${UNUSUAL_UNITS[unit]}`,
    expected: `gewöhnlich ${least === 0 ? `bis ${german(most)}` : `${german(least)} bis ${german(most)}`} ${UNUSUAL_UNITS[unit]}`,
    remedy: `Berichtigen, oder, wenn es so gemeint ist, "${path}" in die Liste "sure" am Anfang der Datei aufnehmen`,
  }),
  'bases-several': ({ told, bases }) => ({
    came: listed(told),
    expected: `eines von ${bases.join(', ')} (shareOfNeed darf daneben stehen)`,
    remedy: `Nur eines von ${listed(told)} behalten`,
  }),

  'engine-fuel': ({ value, kind, kinds }, path) => ({
    came: `${german(value)} für einen Motor, der ${FUEL_WORDS[kind]} verbrennt`,
    expected: `ein Kraftstoff der Art ${listed([...kinds], 'oder')}`,
    remedy: `/fuel/kind berichtigen, oder ${path} weglassen`,
  }),
  'engine-hours': ({ idling, airConditioning }) => ({
    came: `${german(idling)} h Leerlauf und ${german(airConditioning)} h Stehen mit Klimaanlage an einem Tag`,
    expected: 'zusammen nicht mehr als 24 h',
    remedy: 'Jede Stunde des Motors einmal zählen: Leerlauf ohne, oder Stehen mit Klimaanlage',
  }),
  'urea-untold': () => ({
    came: 'ein Harnstofftank ohne den Verbrauch',
    expected: 'percentOfFuel oder litresPer1000Km',
    remedy:
      'percentOfFuel nach dem Handbuch angeben: die meisten Motoren brauchen 3 bis 6 % ihres Kraftstoffs',
  }),
  'can-filling': ({ fillPercent }) => ({
    came: `${german(fillPercent)} %`,
    expected: 'Prozent dessen, was der Kanister enthält, 1 bis 100',
    remedy: 'Für einen Kanister, der zu 95 % gefüllt wird, 95 schreiben',
  }),

  'use-untold': () => ({
    came: 'nichts',
    expected:
      'eine Zahl über 0 und von höchstens 1000, in Litern pro Tag, oder eine Gruppe von Schlüsseln (low, typical, high), oder eine Besatzung',
    remedy: '"litresPerDay" hinzufügen, oder unter /crew angeben, wer aus den Tanks trinkt',
  }),
  'grade-without-crew': () => ({
    came: 'ein Behälter, der für eine Qualität bestimmt ist',
    expected: 'daneben eine Besatzung, damit bekannt ist, wie viel von jeder Qualität verbraucht wird',
    remedy: '/crew mit den Menschen hinzufügen, oder grade weglassen',
  }),
  'observed-twice': () => ({
    came: 'eine beobachtete Zahl neben /water/litresPerDay',
    expected: 'eine von beiden: beide sind die beobachteten Liter pro Tag für alle an Bord',
    remedy: '/crew/observedLitresPerDay behalten und /water/litresPerDay weglassen',
  }),
  'drinking-nothing': (_, path) => ({
    came: '0 l pro Tag',
    expected: 'was der Mensch trinkt, über 0',
    remedy: `Liter pro Tag in ${path} angeben, oder es weglassen: dann gilt die Zahl der Stufe`,
  }),
  'heat-twice': ({ key }) => ({
    came: `wbgtC und ${key}`,
    expected: 'WBGT, oder temperatureC mit humidityPercent, sun und wind',
    remedy: 'wbgtC behalten, wenn es gemessen oder vorhergesagt wurde, sonst weglassen',
  }),
  'heat-incomplete': ({ temperature, humidity }) => ({
    came: temperature
      ? 'temperatureC ohne humidityPercent'
      : humidity
        ? 'humidityPercent ohne temperatureC'
        : 'weder wbgtC noch temperatureC',
    expected: 'wbgtC, oder temperatureC mit humidityPercent',
    remedy: 'Das Fehlende hinzufügen; in einer trockenen Wüste ist die Feuchte am Tag oft 10 bis 25 %',
  }),

  'stage-key': ({ key, kind, kinds }) => ({
    came: `${key} bei einer Stufe der Art ${kind} (${STAGES[kind]})`,
    expected: `nur bei ${kinds.join(', ')}`,
    remedy: `${key} weglassen, oder die Art berichtigen`,
  }),
  'germs-twice': ({ germs }) => ({
    came: `sowohl log als auch Prozent für ${GERMS[germs]}`,
    expected: 'eines von beiden',
    remedy: 'Behalten, was der Hersteller angibt',
  }),
  'pump-rising': ({ ratedKPa, noFlowKPa }) => ({
    came: `${german(ratedKPa)} kPa beim Nenndurchfluss, ${german(noFlowKPa)} kPa ohne Durchfluss`,
    expected: 'beim Nenndurchfluss weniger Druck als ohne',
    remedy: 'Beide Zahlen dem Datenblatt der Pumpe entnehmen',
  }),
  'stage-missing': ({ afterStage, stages }) => ({
    came: `nach Stufe ${afterStage}`,
    expected: `0 bis ${stages}, die Zahl der Stufen`,
    remedy: 'Die Nummer der letzten Stufe davor angeben, 0 für keine',
  }),
  'target-above-maximum': ({ log, germs, maximumLog }) => ({
    came: `ein Ziel von ${german(log)} log für ${GERMS[germs]}, ein Höchstwert von ${german(maximumLog)}`,
    expected: 'ein Höchstwert, der nicht unter dem Ziel liegt',
    remedy: 'Den Höchstwert heben, oder weniger verlangen',
  }),

  'kerb-below-contents': ({ kerbKg, contentsKg }) => ({
    came: `${german(kerbKg)} kg, von denen Kraftstoff, Wasser und Fahrer ${Math.round(contentsKg)} kg ausmachen`,
    expected: 'mehr, als die Leermasse einschließt',
    remedy: 'kerbKg oder die Tanks berichtigen, oder für später eingebaute Tanks emptyKg angeben',
  }),
  'axles-off-kerb': ({ front, rear, kerbKg, toleranceKg }) => ({
    came: `vorn ${german(front)} kg und hinten ${german(rear)} kg, zusammen ${german(front + rear)} kg`,
    expected: `die Leermasse von ${german(kerbKg)} kg, auf ${Math.round(toleranceKg)} kg genau`,
    remedy: 'Die Achslasten so angeben, wie sie bei Leermasse gewogen wurden, oder kerbKg berichtigen',
  }),
  'permitted-below-kerb': ({ limitKg, kg }, path) => ({
    came: `${german(limitKg)} kg, während dort bei Leermasse ${german(kg)} kg lasten`,
    expected: 'mindestens, was das Fahrzeug bei Leermasse wiegt',
    remedy: `${path} oder die Leermasse berichtigen`,
  }),
  'height-twice': () => ({
    came: 'cgHeightM und axleLift',
    expected: 'eines von beiden',
    remedy: 'cgHeightM behalten, wenn die Höhe bekannt ist, sonst axleLift',
  }),
  'lift-without-axles': () => ({
    came: 'axleLift ohne axleKg und wheelbaseM',
    expected: 'daneben Achslasten und Radstand',
    remedy: 'axleKg und wheelbaseM angeben, oder axleLift weglassen',
  }),
  'cabin-inside-out': ({ fromM, toM, floorHeightM, roofHeightM }) => ({
    came: `von ${german(fromM)} bis ${german(toM)} m, Boden ${german(floorHeightM)}, Dach ${german(roofHeightM)} m`,
    expected: 'fromM vor toM, und der Boden unter dem Dach',
    remedy: 'Meter hinter der Vorderachse und über dem Boden angeben',
  }),
  'place-beyond-length': ({ behindFrontAxleM, aheadM, lastM, wheelbaseM }) => ({
    came: `${german(behindFrontAxleM)} m hinter der Vorderachse`,
    expected: `zwischen ${german(-aheadM)} und ${german(Number(lastM.toFixed(2)))} m bei einem Fahrzeug mit einem Radstand von ${german(wheelbaseM)} m`,
    remedy: 'Von der Vorderachse nach hinten messen, in Metern',
  }),
  'place-beyond-width': ({ sideM, mostM, trackM }) => ({
    came: `${german(sideM)} m von der Mitte`,
    expected: `höchstens ${german(Number(mostM.toFixed(2)))} m bei einer Spurweite von ${german(trackM)} m`,
    remedy: 'Von der Mitte des Fahrzeugs messen, links negativ, in Metern',
  }),

  'aboard-twice': ({ litres, sinceFill }) => ({
    came: `${litres} und ${sinceFill}`,
    expected: 'eines von beiden',
    remedy: `${litres} behalten, wenn die Liter bekannt sind, sonst ${sinceFill}`,
  }),
  'aboard-above-tanks': ({ litres, drawableL }) => ({
    came: `${german(litres)} l an Bord`,
    expected: `höchstens die ${german(Number(drawableL.toFixed(3)))} l, die die festen Tanks der Ausrüstung geben`,
    remedy:
      'Die Liter an Bord oder die Tanks der Ausrüstung berichtigen (was in Kanistern ist, wird am Anfang nicht gerechnet)',
  }),
  'date-impossible': ({ date }, path) => ({
    came: `"${date}"`,
    expected: 'ein Tag, den der Kalender hat',
    remedy: `${path} berichtigen`,
  }),
  'stretch-backward': ({ fromKm, toKm }) => ({
    came: `von km ${german(fromKm)} bis km ${german(toKm)}`,
    expected: 'fromKm vor toKm',
    remedy: 'Kilometer der Route in Fahrtrichtung angeben',
  }),
  'box-inside-out': ({ bbox }, path) => ({
    came: `[${bbox.join(', ')}]`,
    expected: '[West, Süd, Ost, Nord] in Grad, Süd unter Nord',
    remedy: `${path} berichtigen`,
  }),
  'stop-twice': ({ id }) => ({
    came: `${id} noch einmal`,
    expected: 'jeder Halt einmal',
    remedy: 'Alles, was über einen Halt bekannt ist, in einen Eintrag setzen',
  }),
  'stop-passed-by': ({ id }) => ({
    came: `${id} sowohl in mustStop als auch in passBy`,
    expected: 'in einem von beiden',
    remedy: 'Aus einer der beiden Listen entfernen',
  }),
  'own-point-twice': ({ id }) => ({
    came: `${id} noch einmal`,
    expected: 'jede eigene Stelle einmal',
    remedy: 'Jeder eine eigene id geben',
  }),
  'own-point-gives-nothing': ({ id }) => ({
    came: `${id} ohne Kraftstoffe und ohne eine Qualität von Wasser`,
    expected: 'fuels, grade, oder beides',
    remedy: 'Angeben, was es dort gibt: fuels: [diesel], oder grade: drinking',
  }),
  'place-unreadable': ({ text, fault }) => ({
    came: `"${text}": ${metricText(NOTE_PHRASES[fault.phrase](fault.facts as never))}`,
    expected: `Breite und Länge wie -33.8683, 84.2067 oder 33°52.1'S 84°12.4'E`,
    remedy: 'In einer dieser Formen schreiben, mit einem Punkt vor Dezimalen',
  }),
  'days-backward': ({ from, until }) => ({
    came: `von ${from} bis ${until}`,
    expected: 'ein letzter Tag am ersten oder danach',
    remedy: 'Die beiden Tage in die Reihenfolge bringen',
  }),
  'correction-empty': ({ id }) => ({
    came: `eine Berichtigung von ${id}, die nichts ändert`,
    expected: 'fuels, grade, openingHours oder phone',
    remedy: 'Angeben, was auf der Karte falsch ist, oder den Eintrag entfernen',
  }),
};
