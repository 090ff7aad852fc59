import type { Lines } from '../../core/phrases/log.ts';
import type { Catalogue } from '../parts/catalogue.ts';
import { figure, fixed } from '../parts/figures.ts';
import { type Parts, parts } from '../parts/part.ts';
import { few } from './shared/few.ts';
import { SURFACE_WORDS } from './shared/words.ts';

/** Intervals, lines or stretches that one caution names; the result marks them all. */
const NAMED = 10;

export const linesText = ({ fromLine, toLine }: Lines): string => `Zeilen ${fromLine} bis ${toLine}`;

const intervalRate = (one: Lines & { litresPer100Km: number }): Parts =>
  parts`${fixed(one.litresPer100Km, 'l/100 km')} (${linesText(one)})`;
const entryRate = (one: { line: number; litresPerPersonDay: number }): Parts =>
  parts`${fixed(one.litresPerPersonDay, 'l')} je Mensch und Tag (Zeile ${one.line})`;
/** Days to one decimal at most, as a person would count them. */
const daysBetween = ({ fromLine, toLine, days }: Lines & { days: number }): Parts => {
  const told = Number(days.toFixed(1));
  return parts`zwischen Zeile ${fromLine} und Zeile ${toLine} (${figure(told, 'count')} ${told === 1 ? 'Tag' : 'Tage'})`;
};

/** What to know before planning with what a log taught. */
export const LOG_CAUTIONS = {
  'above-high': (facts) =>
    facts.kind === 'fuel'
      ? parts`Etwa jede zehnte Strecke verbrauchte mehr als den hohen Wert; das meiste war ${intervalRate(facts.worst)}. Mehr einplanen, wo der Weg schlechter ist als der aufgeschriebene.`
      : parts`Etwa jede zehnte Zeile verbrauchte mehr als den hohen Wert; das meiste war ${entryRate(facts.worst)}.`,
  outliers: (facts) =>
    facts.kind === 'fuel'
      ? parts`Weit ab von den übrigen, trotzdem gezählt: ${few(facts.rates.map(intervalRate), NAMED)}. Zu niedrig kann heißen, dass eine Füllung nicht aufgeschrieben wurde, zu hoch, dass ein Tank nicht voll war: eine solche Zeile bezeichnen oder berichtigen.`
      : parts`Weit ab von den übrigen, trotzdem gezählt: ${few(facts.rates.map(entryRate), NAMED)}.`,
  'few-intervals': ({ intervals }) =>
    parts`${intervals} Strecken sind wenige: der hohe Wert hängt an den beiden höchsten davon.`,
  'short-intervals': ({ intervals }) => {
    const named = intervals.map((one) => parts`${fixed(one.km, 'km')} (${linesText(one)})`);
    return parts`Kurze, bei denen eine Pumpe, die einen Liter früher oder später abschaltet, am meisten ausmacht: ${few(named, NAMED)}.`;
  },
  'mixed-surfaces': () =>
    parts`Die Strecken sind von mehr als einem Untergrund, oder manche nennen ihren nicht: die Spanne aller zusammen gilt für die aufgeschriebene Mischung. Aus einem Untergrund allein lernen (--surface), wo es genug davon gibt.`,
  'surface-not-told': () =>
    parts`Das Buch nennt den Untergrund nicht (eine Spalte „surface“): in der Ausrüstung unter /fuel/observed angeben, welcher es war, sonst wird der Verbrauch für Sand nicht richtig erhöht.`,
  'mass-not-told': () =>
    parts`Das Buch nennt die Masse des beladenen Fahrzeugs nicht (eine Spalte „mass_kg“): sie in der Ausrüstung unter /fuel/observed angeben, wenn sie bekannt ist.`,
  'all-in': () =>
    parts`In den Litern eines Buchs stecken auch Leerlauf, Heizung und Steigungen. Was die Ausrüstung davon neben einem gelernten Verbrauch angibt (/fuel/perHour, /fuel/hours), zählt noch einmal: das irrt auf die sichere Seite.`,
  'split-fill': ({ lines }) => {
    const named = lines.map((line) => parts`Zeile ${line}`);
    return parts`Beim selben Kilometerstand wie die Zeile davor, deshalb mit ihr als ein Halt genommen: ${few(named, NAMED)}.`;
  },
  'newest-first': () =>
    parts`Der Kilometerstand fällt von Zeile zu Zeile: das Buch wurde mit dem Neuesten zuerst gelesen.`,
  'people-vary': ({ crews }) =>
    parts`Das Buch hat Besatzungen von ${crews.join(', ')}: der Verbrauch gilt als mit der Zahl der Menschen steigend, obwohl Kochen und Abwaschen geteilt werden.`,
  'days-not-logged': ({ stretches }) =>
    parts`Tage, von denen keine Zeile spricht: ${few(stretches.map(daysBetween), NAMED)}. Sie zählen nicht.`,
  'days-overlap': ({ stretches }) =>
    parts`Zeilen, deren Tage sich überschneiden: ${few(stretches.map(daysBetween), NAMED)}. Richtig nur, wenn sie von verschiedenen Menschen oder Tanks sprechen.`,
  'weather-as-logged': () =>
    parts`Was verbraucht wurde, gilt für das Wetter und die Arbeit der aufgeschriebenen Tage. In größerer Hitze brauchen Menschen mehr: heiße Tage nie nach einem kühlen Buch planen.`,
} satisfies Partial<Catalogue['cautions']>;

/** Why lines of a log of fill-ups give no rate. */
export const LOG_OMISSIONS = {
  'before-first-full': () => parts`vor dem ersten vollen Tank gefüllt`,
  'after-last-full': () => parts`nach dem letzten vollen Tank gefüllt`,
  'fill-missing': ({ line, lacks }) =>
    lacks === 'fill-up'
      ? parts`von voll zu voll, aber eine Füllung vor Zeile ${line} fehlt`
      : parts`von voll zu voll, aber Zeile ${line} hat keine Liter`,
  'other-surface': ({ surface }) => parts`nicht durchweg auf: ${SURFACE_WORDS[surface]}`,
} satisfies Partial<Catalogue['reasons']>;

const EACH = { interval: 'jede Strecke', line: 'jede Zeile' } as const;

/** How the figures of a log were come by, and what stands beside them in the lines for a rig. */
export const LOG_PHRASES = {
  'log-intervals': () =>
    parts`Eine Strecke reicht von einem vollen Tank zum nächsten; alles, was nach dem ersten gefüllt wurde, auch Teilfüllungen, wurde auf ihr verbraucht.`,
  'log-percentiles': ({ each }) =>
    parts`Niedrig, gewöhnlich und hoch sind das 10., 50. und 90. Perzentil davon, wobei ${EACH[each]} einmal zählt, wie lang sie auch ist (zwischen Nachbarn geradlinig an der Stelle (n - 1) p).`,
  'log-fences': ({ fence }) =>
    parts`Ausreißer liegen mehr als das ${figure(fence, 'count')}-Fache des Abstands der Quartile jenseits der Quartile. Sie sind aufgeführt, und sie zählen.`,
  'log-entries': () => parts`Jede Zeile gibt Liter, geteilt durch Menschen und durch Tage.`,
  'log-crew': ({ people, from }) =>
    parts`Für die Besatzung: mal ${people} ${people === 1 ? 'Mensch' : 'Menschen'}, ${from === 'log' ? 'die meisten, die das Buch hat (unsere Annahme)' : 'wie gewünscht'}.`,
  'log-yaml-intervals': ({ intervals, km }) =>
    parts`${intervals} Strecken von voll zu voll, ${Math.round(km)} km`,
  'log-yaml-lines': ({ people, lines }) =>
    parts`${people} ${people === 1 ? 'Mensch' : 'Menschen'}, gelernt aus ${lines} Zeilen`,
  'log-yaml-crew': () => parts`in einer Ausrüstung, die ihre Besatzung angibt, an deren Stelle:`,
} satisfies Partial<Catalogue['phrases']>;
