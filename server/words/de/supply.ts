import type { BarrierKind, ClosedLand } from '../../core/phrases/said/barriers.ts';
import type {
  SupplyFindings,
  SupplyReason,
  SupplyReasonCode,
  SupplyReasons,
} from '../../core/phrases/supply.ts';
import type { Say, Sayings } from '../parts/catalogue.ts';
import { figure, kmOf } from '../parts/figures.ts';
import { byTags, dates, details, each, tagList } from '../parts/findings.ts';
import { joined, type Parts, parts } from '../parts/part.ts';
import { correction, expiry, noted } from './noted.ts';
import { COMMODITY_WORDS, EVIDENCE_WORDS, FUEL_WORDS } from './shared/words.ts';

/** A reason inside another. */
const reasonParts = ({ code, facts }: SupplyReason, say: Say): Parts =>
  (SUPPLY_REASONS[code] as Sayings<SupplyReasons>[SupplyReasonCode] as (facts: unknown, say: Say) => Parts)(
    facts,
    say,
  );

const CLOSED_LANDS: Record<ClosedLand, string> = {
  military: 'Militärgelände',
  prison: 'einem Gefängnis',
  airfield: 'einem Flugplatz',
  closed: 'gesperrtem Gelände',
};

const BARRIERS: Record<BarrierKind, string> = {
  river: 'ein Fluss',
  canal: 'ein Kanal',
  railway: 'eine Bahnlinie',
  coast: 'eine Küste',
  border: 'eine Staatsgrenze',
};

/** What lies between, with its name where it has one. */
function obstacle(finding: SupplyFindings['no-way-across']): Parts {
  if (finding.across === 'no-road') return parts`keine verzeichnete Straße in der Nähe`;
  const { across, name } = finding;
  return parts`${BARRIERS[across]}${name === null ? '' : ` (${name})`} zwischen der Stelle und der Route`;
}

/** Why a supply does not count, or what to know of it: what is known, then what to do. */
export const SUPPLY_REASONS: Sayings<SupplyReasons> = {
  'reported-out': (facts) =>
    parts`Sie haben gemeldet, dass es nicht geht, am ${each(facts, ({ until, ...report }) => parts`${noted(report)}${until === undefined ? '' : `, bis ${until}`}`)}. Eine neuere Meldung ändert das`,
  'out-of-use': (facts) =>
    parts`Als außer Betrieb, verschwunden oder noch nicht gebaut verzeichnet${byTags(facts)}: nicht dorthin fahren`,
  closed: (facts) => parts`Als geschlossen verzeichnet${byTags(facts)}: fragen, bevor damit geplant wird`,
  broken: (facts) =>
    parts`Als kaputt oder verschlossen verzeichnet${byTags(facts)}: fragen, bevor damit geplant wird`,
  'not-public': (facts) => parts`Nicht öffentlich${byTags(facts)}: erst den Besitzer fragen`,
  'permit-needed': (facts) =>
    parts`Nur mit Genehmigung${byTags(facts)}: sie einholen, dann die Stelle bestätigen`,
  'out-of-season': (facts) =>
    parts`Außerhalb der Jahreszeit: ${each(facts, ({ season, from, to }) => parts`${season}, beurteilt für ${to === null ? from : `${from} bis ${to}`}`)}. Fragen, bevor damit geplant wird`,
  'not-there-yet': (facts) =>
    parts`${each(facts, ({ from, earliest }) => (earliest === null ? parts`Erst ab ${from} da: angeben, wann die Reise beginnt` : parts`Erst ab ${from} da, und Sie kommen vielleicht am ${earliest}`))}`,
  'no-longer-there': (facts) =>
    parts`${each(facts, ({ until, latest }) => (latest === null ? parts`Nur bis ${until} da: angeben, wann die Reise beginnt` : parts`Nur bis ${until} da, und Sie kommen vielleicht am ${latest}`))}`,
  'no-opening-found': (facts) =>
    parts`${each(facts, ({ hours, earliest, latest }) => parts`Keine Öffnung ist sicher binnen zwei Wochen nach der Ankunft zwischen ${earliest} und ${latest} (${hours})`)}: fragen, bevor damit geplant wird`,
  'no-pump': (facts) => parts`Keine Pumpe${byTags(facts)}: Seil und Eimer müssen an Bord sein`,
  'fuel-not-sold': (facts) => parts`Verkauft Ihren Kraftstoff nicht${byTags(facts)}`,
  'grade-below-engine': (facts) =>
    parts`Führt nur Benzin mit niedrigerer Oktanzahl, als Ihr Motor braucht${byTags(facts)}`,
  'blend-beyond-engine': (facts) => parts`Führt nur Mischungen, die Ihr Motor nicht verträgt${byTags(facts)}`,
  'for-aircraft': (facts) => parts`Kraftstoff für Flugzeuge, nicht für Fahrzeuge${byTags(facts)}`,
  'for-boats': (facts) => parts`Für Boote${byTags(facts)}: fragen, ob ein Fahrzeug hinkommt und bedient wird`,
  'for-trains': (facts) => parts`Für Züge${byTags(facts)}: fragen, ob ein Fahrzeug bedient wird`,
  'tags-contradict': (facts) =>
    parts`Die Tags widersprechen einander (${each(facts, (one) => ('tags' in one ? tagList(one) : parts`Wasser in einem Eintrag, keines in einem anderen`))}): als nicht trinkbar nehmen`,
  'for-fire-fighting': () => parts`Für die Feuerwehr bestimmt: keine Versorgung`,
  'for-animals': () => parts`Wasser für Tiere, nicht für Menschen`,
  decorative: () => parts`Ein Brunnen gilt als Zierde, solange die Tags nicht Trinkwasser sagen`,
  'not-fit': (facts) => parts`Als nicht trinkbar verzeichnet${byTags(facts)}`,
  salty: (facts) => parts`Salzwasser${byTags(facts)}: kein Filter nimmt Salz heraus`,
  untreated: (facts) => parts`Unbehandeltes Wasser${byTags(facts)}: vor dem Trinken aufbereiten`,
  'not-controlled': (facts) => parts`Nicht amtlich geprüft${byTags(facts)}: vor dem Trinken aufbereiten`,
  'not-stated-fit': () => parts`Nicht als trinkbar angegeben: vor dem Trinken aufbereiten`,
  'fit-on-condition': (facts) =>
    parts`Nur unter einer Bedingung trinkbar${byTags(facts)}: fragen, oder aufbereiten`,
  'fit-unclear': (facts) => parts`Ob es trinkbar ist, ist unklar${byTags(facts)}: fragen, oder aufbereiten`,
  'salt-unknown': () =>
    parts`Brunnenwasser kann salzig oder verdorben sein, was kein Filter behebt: prüfen lassen`,
  'minerals-unknown': () =>
    parts`Heiße Quellen können verbrühen und Mineralien enthalten, die kein Filter herausnimmt`,
  'salt-found': (facts) =>
    parts`Sie haben vermerkt, dass es salzig ist, am ${each(facts, noted)}: nur Umkehrosmose nimmt Salz heraus`,
  'line-lacks': (facts, say) => parts`Ihre Aufbereitung macht es nicht trinkbar: ${details(facts, say)}`,
  'use-unknown': () => parts`Wofür das Wasser ist, und ob es entnommen werden kann, ist nicht bekannt`,
  'never-implied': (facts) =>
    parts`Die Tags sagen nicht, dass es ${each(facts, ({ fuel }) => parts`${FUEL_WORDS[fuel]}`)} verkauft, was viele Tankstellen nicht tun: erst fragen`,
  'other-fuels-listed': (facts) =>
    parts`Andere Kraftstoffe sind aufgeführt${byTags(facts)}, Ihrer nicht: erst fragen`,
  'grade-not-sold': (facts) =>
    parts`Eine Sorte Ihres Kraftstoffs wird hier nicht verkauft${byTags(facts)}, keine andere ist aufgeführt: erst fragen`,
  'fuel-kind-unknown': () =>
    parts`Die Tags sagen nicht, dass es Ihren Kraftstoff für Fahrzeuge verkauft: erst fragen`,
  'fuel-unclear': (facts) => parts`Ob es Ihren Kraftstoff verkauft, ist unklar${byTags(facts)}: erst fragen`,
  'fuel-may-not-suit': (facts) =>
    parts`Verkauft einen Kraftstoff, den nicht jeder Motor Ihrer Art verträgt${byTags(facts)}: im Handbuch nachsehen`,
  'lorries-only': (facts) => parts`Für schwere Fahrzeuge${byTags(facts)}: fragen, ob Sie bedient werden`,
  'not-for-cars': (facts) => parts`Kraftfahrzeuge dürfen nicht hierher${byTags(facts)}: erst fragen`,
  'members-only': (facts) => parts`Nur für Mitglieder${byTags(facts)}: fragen, ob Sie bedient werden`,
  'access-unclear': (facts) => parts`Wer es benutzen darf, ist unklar${byTags(facts)}: erst fragen`,
  'hard-to-fill': (facts) =>
    parts`Eine Flasche lässt sich hier nicht füllen${byTags(facts)}, erst recht kein Kanister`,
  'status-unclear': (facts) => parts`Ob es geht, ist unklar${byTags(facts)}: erst fragen`,
  'words-deny': (facts) =>
    parts`Worte eines Kartierers sprechen dagegen (${each(facts, ({ key, quote }) => parts`${key}: „${quote}“`)}): fragen, bevor damit geplant wird`,
  'may-be-dry': (facts) => parts`Kann trocken sein${byTags(facts)}: fragen, bevor damit geplant wird`,
  'season-unknown': (facts) =>
    parts`Nur in der Jahreszeit: ${each(facts, ({ season, dated }) => parts`${season}${dated ? '' : ', kein Tag der Abfahrt angegeben'}`)}. Fragen, bevor damit geplant wird`,
  'hours-unread': (facts) =>
    parts`${each(facts, ({ hours, unreadable }) => parts`Die Öffnungszeiten ${unreadable ? 'sind nicht lesbar' : 'sagen nicht, wann offen ist'}: ${hours}`)}. Fragen, bevor damit geplant wird`,
  stale: (facts) =>
    parts`Zuletzt bearbeitet oder geprüft am ${dates(facts)}, über drei Jahre davor: kann sich seither geändert haben`,
  undated: () =>
    parts`Weder der Eintrag noch seine Datei sagt, wie alt er ist: bestätigen, oder für das Datum der Datei einstehen`,
  'gone-in-newer': (facts) =>
    parts`In der neueren Karte verschwunden (${each(facts, ({ source }) => parts`${source}`)}), die den Ort deckt: erst fragen`,
  'on-closed-ground': (facts) =>
    parts`Liegt in ${each(facts, ({ land, name, id }) => parts`${CLOSED_LANDS[land]} (${name === null ? id : `${name}, ${id}`})`)}: fragen, ob Sie hinein dürfen`,
  'no-way-across': (facts) =>
    parts`Kein Weg hinüber bekannt: ${each(facts, (finding) => obstacle(finding))}. Erst auf einer Karte eine Brücke oder Straße dorthin suchen`,
  'evidence-below': (facts) =>
    parts`${each(facts, ({ evidence, commodity, from }) => parts`Nur als ${EVIDENCE_WORDS[evidence]} bekannt, ${COMMODITY_WORDS[commodity]} zählt ab ${EVIDENCE_WORDS[from]}`)}: bestätigen, oder weniger verlangen`,
  'tags-differ': (facts) =>
    parts`Die hier vereinten Objekte unterscheiden sich (${each(facts, ({ id, keys }) => parts`${id}: ${keys.join(', ')}`)}): die schlechtere Lesart gilt`,
  'confirmation-expired': (facts) =>
    parts`Ihre Bestätigung ist abgelaufen (${each(facts, expiry)}): noch einmal bestätigen`,
  'confirmation-ahead': (facts) =>
    parts`Ihre Bestätigung vom ${dates(facts)} liegt nach dem beurteilten Tag und wird deshalb nicht verwendet`,
  'confirmation-undated': (facts) =>
    parts`Ihre Bestätigung vom ${dates(facts)} lässt sich ohne einen Tag der Abfahrt nicht abwägen: einen angeben`,
  'confirmation-not-yet': (facts) =>
    parts`Ihre Bestätigung gilt erst später (${each(facts, ({ on, from }) => parts`${on}, ab ${from}`)}) und wird deshalb nicht verwendet`,
  confirmed: (facts) => parts`Sie haben es bestätigt am ${each(facts, noted)}`,
  'confirm-again': (facts) =>
    parts`Vor der Abfahrt noch einmal bestätigen: ${each(facts, ({ on, from }) => parts`${on} liegt lange vor der Abfahrt, wieder fragen ab ${from}`)}`,
  'confirmed-against-tags': (facts, say) =>
    parts`Ihre Bestätigung steht dagegen: ${each(facts, ({ against }) =>
      joined(
        against.map((reason) => reasonParts(reason, say)),
        '. ',
      ),
    )}`,
  'class-by-tags': () =>
    parts`Sie haben bestätigt, dass es Wasser gibt; ob es trinkbar ist, richtet sich weiter nach der Karte`,
  'treat-everything': () =>
    parts`Als trinkbar angegeben, aber Sie bereiten jede unbestätigte Quelle auf: was ein Einheimischer verträgt, vertragen Sie vielleicht nicht`,
  'made-fit': (facts, say) => parts`Erst nach Ihrer Aufbereitung trinkbar: ${details(facts, say)}`,
  'treated-as-far-as-known': (facts, say) => parts`Gerechnet, soweit bekannt: ${details(facts, say)}`,
  'salt-noted': (facts) => parts`Sie haben vermerkt, dass es nicht salzig ist, am ${each(facts, noted)}`,
  'time-to-fill': (facts, say) => parts`Füllen braucht Zeit: ${details(facts, say)}`,
  'in-season': (facts) =>
    parts`Nur in der Jahreszeit: ${each(facts, ({ season }) => parts`${season}`)}, also auch am beurteilten Tag`,
  'customers-only': (facts) => parts`Nur für Kunden${byTags(facts)}`,
  'access-unknown': (facts) => parts`Wer es benutzen darf, ist nicht bekannt${byTags(facts)}`,
  'lorry-pump': (facts) =>
    parts`Zapfsäule für schwere Fahrzeuge${byTags(facts)}: weiter Stutzen, passt vielleicht nicht in Ihren Einfüllstutzen`,
  'diesel-kin': (facts) => parts`Diesel anderer Art${byTags(facts)}: nachsehen, ob Ihr Motor ihn verträgt`,
  'ethanol-blend': (facts) =>
    parts`Nur Benzin mit Ethanol ist aufgeführt${byTags(facts)}: nachsehen, ob Ihr Motor es verträgt`,
  'low-octane': (facts) =>
    parts`Nur Benzin mit niedriger Oktanzahl ist aufgeführt${byTags(facts)}: nachsehen, ob Ihr Motor es verträgt`,
  'grade-not-stated': (facts) =>
    parts`Ob die Sorte zu Ihrem Motor passt, ist nicht angegeben${byTags(facts)}: erst fragen`,
  'powered-pump': (facts) => parts`Die Pumpe braucht Strom${byTags(facts)}`,
  fee: (facts) => parts`Kostet Geld${byTags(facts)}`,
  'opening-hours': (facts) =>
    parts`Öffnungszeiten laut Karte: ${each(facts, ({ hours }) => parts`${hours}`)}`,
  'way-not-looked-at': (facts) =>
    parts`Was zwischen der Stelle und der Route liegt, ist nicht geprüft (${each(facts, ({ overM }) => parts`über ${figure(kmOf(overM), 'km')} abseits`)}): auf eine Karte sehen`,
  'check-date-ahead': (facts) =>
    parts`Ein Prüfdatum nach dem beurteilten Tag wird nicht verwendet${byTags(facts)}`,
  'mapper-doubt': (facts) =>
    parts`Ein Kartierer hat um Prüfung gebeten: ${each(facts, ({ note }) => parts`${note}`)}`,
  'laid-litres': (facts) =>
    parts`Ihr eigener Vorrat: ${each(facts, ({ litres }) => parts`${figure(litres, 'l')}`)} und nicht mehr. Nachsehen, ob er noch da ist`,
  'litres-told': (facts) =>
    parts`${each(facts, ({ litres, ...note }) => parts`Nicht mehr als ${figure(litres, 'l')} zu bekommen, wie von Ihnen vermerkt am ${noted(note)}`)}`,
  'own-point': (facts) => parts`Ihre eigene Stelle, vermerkt am ${each(facts, noted)}`,
  corrected: (facts) => parts`Von Ihnen berichtigt: ${each(facts, correction)}`,
};
