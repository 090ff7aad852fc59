import type { LogPlace, NeededColumn, NumberRange } from '../../core/phrases/log-faults.ts';
import type { LogFaultSayings } from '../parts/catalogue.ts';
import { metricText } from '../parts/metric.ts';
import { parts } from '../parts/part.ts';
import { LOG_OMISSIONS, linesText } from './log.ts';
import { few } from './shared/few.ts';
import { counted, german } from './shared/numbers.ts';
import { SURFACE_WORDS } from './shared/words.ts';

/** A refusal is one line: of more than this the rest are counted. */
const NAMED = 5;
/** Columns of a header that a refusal names. */
const TITLES = 12;
const SHOWN = 40;
const SEPARATORS = { ',': 'ein Komma', ';': 'einen Strichpunkt', '\t': 'einen Tabulator' };
const KINDS = { fuel: 'ein Tankbuch', water: 'ein Wasserbuch' } as const;
const COLUMNS: Record<NeededColumn, string> = {
  odometer: 'odometer_km (oder odometer_mi, oder trip_km, trip_mi)',
  volume: 'litres (oder gal_us, gal_imp)',
  full: 'full',
  date: 'date',
  people: 'people',
  days: 'days',
};
const WITH_UNIT = {
  odometer: 'odometer_km oder odometer_mi',
  trip: 'trip_km oder trip_mi',
  mass: 'mass_kg oder mass_lb',
  gallons: 'gal_us (3,785 l) oder gal_imp (4,546 l)',
};

/** Where in a log something is. */
export function logPlaceText(place: LogPlace): string {
  if ('option' in place) return place.option;
  if ('fromLine' in place) return linesText(place);
  return place.column === undefined ? `Zeile ${place.line}` : `Zeile ${place.line}, ${place.column}`;
}

/** A cell as it came, in quotes, short. */
function quoted(text: string): string {
  const characters = [...text];
  return JSON.stringify(characters.length <= SHOWN ? text : `${characters.slice(0, SHOWN - 1).join('')}…`);
}

function rangeText({ above, least, most, unit, whole }: NumberRange): string {
  const from =
    above === undefined
      ? least === undefined
        ? ''
        : `von mindestens ${german(least)} und `
      : `über ${german(above)} und von `;
  return `eine ${whole === true ? 'ganze ' : ''}Zahl ${from}höchstens ${german(most)}, in ${unit}`;
}

const flagText = ({ yes, no }: { yes: readonly string[]; no: readonly string[] }): string =>
  `${yes.join(', ')}; oder ${no.join(', ')}`;

/** Why a log cannot be used. */
export const LOG_FAULTS: LogFaultSayings = {
  'number-form': ({ text, range, decimalComma }) => ({
    came: quoted(text),
    expected: rangeText(range),
    remedy: decimalComma
      ? 'Bloße Ziffern schreiben, mit einem Komma vor den Dezimalen, wie 1234,5'
      : 'Bloße Ziffern schreiben, mit einem Punkt vor den Dezimalen, wie 1234.5 (ein Dezimalkomma nur zwischen Strichpunkten)',
  }),
  'number-ambiguous': ({ text, range }) => ({
    came: quoted(text),
    expected: rangeText(range),
    remedy: `Es kann eine ganze Zahl sein oder eine mit drei Dezimalen: ${text.replace('.', '')} oder ${text}0 schreiben`,
  }),
  'number-outside': ({ text, range }) => ({
    came: quoted(text),
    expected: rangeText(range),
    remedy: 'Die Zahl berichtigen',
  }),
  'number-missing': ({ range }) => ({
    came: 'nichts',
    expected: rangeText(range),
    remedy: 'Die Zelle ausfüllen',
  }),
  'word-unknown': ({ text, ...words }) => ({
    came: quoted(text),
    expected: flagText(words),
    remedy: 'Eines dieser Wörter verwenden',
  }),
  'full-missing': (words) => ({
    came: 'nichts',
    expected: flagText(words),
    remedy: 'Angeben, ob vollgetankt wurde; wo es niemand weiß, part schreiben',
  }),
  'surface-unknown': ({ text, surfaces }) => ({
    came: quoted(text),
    expected: `eines von ${surfaces.join(', ')}, oder nichts`,
    remedy: 'Eines dieser Wörter verwenden; alles andere gehört unter note',
  }),
  'date-form': ({ text }) => ({
    came: text === '' ? 'nichts' : quoted(text),
    expected: 'ein Datum wie 2026-05-04',
    remedy: 'Jahr, Monat und Tag in dieser Reihenfolge schreiben',
  }),

  'log-empty': () => ({
    came: 'eine leere Datei',
    expected: 'eine Kopfzeile und eine Zeile für jede Füllung',
    remedy: 'Das Buch selbst übergeben',
  }),
  'log-long': ({ most }) => ({
    came: `mehr als ${most} Zeilen`,
    expected: 'ein Tankbuch oder ein Wasserbuch',
    remedy: 'Auf die Zeit kürzen, auf die es ankommt',
  }),
  'cells-surplus': ({ cells, most, separator }) => ({
    came: counted(cells, 'Zelle', 'Zellen'),
    expected: `${most}, wie in der Kopfzeile`,
    remedy: `Eine Zelle, die ${SEPARATORS[separator]} enthält, in doppelte Anführungszeichen setzen, oder die überzähligen entfernen`,
  }),
  'quote-inside': () => ({
    came: 'ein doppeltes Anführungszeichen in einer Zelle',
    expected: 'Anführungszeichen um die ganze Zelle, darin verdoppelt',
    remedy: 'Für 2" Schlauch "2"" Schlauch" schreiben',
  }),
  'quote-open': () => ({
    came: 'ein doppeltes Anführungszeichen, das nie geschlossen wird',
    expected: 'ein zweites am Ende der Zelle',
    remedy: 'Es schließen',
  }),
  'column-twice': ({ title, first }) => ({
    came: `${quoted(title)} neben ${quoted(first)}`,
    expected: 'eine Spalte von jeder Art',
    remedy: 'Eine der beiden entfernen',
  }),
  'column-missing': ({ kind, missing, needed }) => ({
    came: `${KINDS[kind]} ohne ${missing.map((name) => COLUMNS[name]).join(', ')}`,
    expected: needed.map((name) => COLUMNS[name]).join(', '),
    remedy: 'Die Spalte mit ihrer Überschrift hinzufügen',
  }),
  'kind-unclear': ({ titles }) => ({
    came: `die Spalten ${titles.slice(0, TITLES).map(quoted).join(', ')}`,
    expected: 'odometer_km,litres,full für Kraftstoff, oder date,litres,people,days für Wasser',
    remedy: 'Eine Kopfzeile angeben, die die Spalten und ihre Einheiten nennt',
  }),
  'unit-missing': ({ title, of }) => ({
    came: `die Überschrift ${quoted(title)}, die ihre Einheit nicht nennt`,
    expected: WITH_UNIT[of],
    remedy: 'Die Einheit in der Überschrift nennen',
  }),

  'odometer-falls': ({ odometer, line, before, beforeLine }) => ({
    came: `${german(odometer)} nach ${german(before)} in Zeile ${beforeLine}`,
    expected: 'ein Kilometerstand, der nicht zurückgeht',
    remedy: `Zeile ${beforeLine} oder Zeile ${line} berichtigen, oder die Zeilen in die Reihenfolge der Fahrt bringen; nach einem Wechsel des Zählers eine Spalte "odometer changed" mit einem yes in dieser Zeile hinzufügen`,
  }),
  'fill-twice': ({ line }) => ({
    came: `dieselbe Füllung wie in Zeile ${line}`,
    expected: 'jede Füllung einmal',
    remedy:
      'Eine der beiden entfernen; wurde dort wirklich zweimal gefüllt, beide in einer Zeile zusammenzählen',
  }),
  'line-twice': ({ line, date }) => ({
    came: `dasselbe wie Zeile ${line} (${quoted(date)})`,
    expected: 'jede Zeile einmal',
    remedy: 'Eine der beiden entfernen, oder sie in einer Spalte "note" unterscheiden',
  }),
  'rate-impossible': ({ litres, km, litresPer100Km, most }) => ({
    came: `${german(litres.toFixed(1))} l auf ${german(km.toFixed(1))} km, ${Math.round(litresPer100Km)} l/100 km`,
    expected: `höchstens ${german(most)} l/100 km`,
    remedy: 'Den Kilometerstand oder die Liter dort berichtigen',
  }),
  'use-impossible': ({ litresPerDay, people, most }) => ({
    came: `${Math.round(litresPerDay)} l pro Tag für ${counted(people, 'Mensch', 'Menschen')}`,
    expected: `höchstens ${german(most)} l pro Tag`,
    remedy: 'Die Liter, die Menschen oder die Tage des Buchs berichtigen',
  }),
  'intervals-few': ({ intervals, leftOut, least, more }) => {
    const found = intervals.map((one) => parts`${linesText(one)}`);
    const omissions = leftOut.map((one) => {
      const lines = one.fromLine === one.toLine ? `Zeile ${one.fromLine}` : linesText(one);
      const why = LOG_OMISSIONS[one.code] as (facts: unknown) => ReturnType<typeof parts>;
      return parts`${lines} ${why(one.facts)}`;
    });
    const foundText = found.length === 0 ? '' : ` (${metricText(few(found, NAMED))})`;
    const leftText = leftOut.length === 0 ? '' : `; weggelassen: ${metricText(few(omissions, NAMED, '; '))}`;
    return {
      came: `${counted(intervals.length, 'Strecke', 'Strecken')} von vollem Tank zu vollem Tank${foundText}${leftText}`,
      expected: `mindestens ${least}`,
      remedy: `Noch ${more} Mal volltanken und es aufschreiben`,
    };
  },
  'lines-few': ({ lines, least }) => ({
    came: counted(lines, 'Zeile', 'Zeilen'),
    expected: `mindestens ${least} Zeilen, jede von einem Tag oder einigen`,
    remedy: `Noch ${least - lines} aufschreiben`,
  }),
  'people-misplaced': ({ people }) => ({
    came: counted(people, 'Mensch', 'Menschen'),
    expected: 'ein Wasserbuch',
    remedy: 'people bei einem Tankbuch weglassen',
  }),
  'surface-misplaced': ({ surface }) => ({
    came: SURFACE_WORDS[surface],
    expected: 'ein Tankbuch',
    remedy: 'Den Untergrund bei einem Wasserbuch weglassen',
  }),
};
