import type { Catalogue } from '../../parts/catalogue.ts';
import { exactPlace, figure, placeAt, rounded } from '../../parts/figures.ts';
import { joined, type Part, parts } from '../../parts/part.ts';
import { called, namedPlace } from '../shared/places.ts';
import { COMMODITY_WORDS } from '../shared/words.ts';

export const COMPARISON_CAUTIONS = {
  'aboard-for-all': () =>
    parts`Die Liter an Bord am Anfang sind für jede Ausrüstung gleich, wie groß ihre Tanks auch sind. Um volle Tanks zu vergleichen, sie weglassen oder die km und Tage seit der letzten Füllung angeben.`,
  'fuels-differ': ({ kinds }) =>
    parts`Die Ausrüstungen fahren mit ${kinds.join(' und ')}: für jede zählen andere Tankstellen.`,
} satisfies Partial<Catalogue['cautions']>;

export const WHAT_IF_CAUTIONS = {
  'turn-round-off-route': ({ atM }) =>
    parts`Umkehren bei ${placeAt(atM)} liegt nicht auf der Route, oder der Weg zurück von dort kann nicht gefahren werden.`,
  'standing-fuel-not-told': () =>
    parts`Wie viel Kraftstoff im Stand weggeht (Leerlauf, Klimaanlage, Heizung), wurde nicht angegeben: Warten wird nur für Wasser gerechnet.`,
  'past-end-not-told': () =>
    parts`Wie weit es nach dem Ende bis zur nächsten Versorgung ist, wurde nicht angegeben: auf dem letzten Abschnitt reichen das, was übrig ist, und die Mindeststände bis zum Ende der Route und nicht weiter.`,
  'mishap-before-bound-stop': () =>
    parts`Ein Stopp, der nicht alles gibt, was gewünscht ist, wird nach einem Missgeschick auf dem Weg dorthin mit weniger verlassen: die Zeilen der Missgeschicke reichen nur bis zum Stopp selbst.`,
  'what-if-rows-left-out': ({ failures, rows }) =>
    parts`Es gibt keinen Plan, deshalb gilt jede Versorgung, die zählt, als benutzt: von ${failures}, die ausfallen können, sind die ${rows} aufgeführt, ohne die am wenigsten übrig ist.`,
  'heat-not-told': () =>
    parts`Wie heiß es wird, wurde bei der Besatzung nicht angegeben: was mehr Hitze bewirkt, ist nicht gerechnet. Angeben: Hitze kann den Wasserbedarf vervielfachen.`,
} satisfies Partial<Catalogue['cautions']>;

const END_WORDS = { low: 'Niedriger', typical: 'Gewöhnlicher', high: 'Hoher' } as const;

const litresADay = (litres: number): Part[] => parts`${rounded(litres, 'l')} pro Tag`;

export const WHAT_IF_PHRASES = {
  'stop-gives-none': ({ commodity, names, others }, say) => {
    const nor =
      others === 0
        ? ''
        : others === 1
          ? ', auch die andere Versorgung dieses Stopps nicht'
          : `, auch die ${others} anderen Versorgungen dieses Stopps nicht`;
    return parts`Kein ${COMMODITY_WORDS[commodity]} bei ${joined(
      names.map((name) => called(name, say)),
      ' und ',
    )}${nor}: von dort weiter mit dem, was an Bord ist.`;
  },
  'container-loses-all': ({ commodity, tank }) =>
    tank === null
      ? parts`Ein Kanister verliert alles (${COMMODITY_WORDS[commodity]}).`
      : parts`Der Tank „${tank}“ verliert alles (${COMMODITY_WORDS[commodity]}); er gilt als geflickt, so dass Kanister eingefüllt werden können.`,
  'water-pump-fails': ({ tanksApart, raw }) =>
    raw
      ? parts`Die Wasserpumpe fällt aus und mit ihr die Aufbereitung am Hahn: was unaufbereitet eingefüllt wurde, ist nicht trinkbar, auch in Kanistern nicht.`
      : parts`Die Wasserpumpe fällt aus: an die festen Tanks kommt man nicht heran${tanksApart ? ', außer an die getrennten' : ''}, nur Kanister bleiben.`,
  waiting: ({ days }) =>
    parts`${rounded(days, 'count', 2)} ${days === 1 ? 'Tag' : 'Tage'} Warten (Reparatur, Wetter, ein Fluss).`,
  'use-all-the-way': ({ commodity, end, rate }) =>
    parts`${END_WORDS[end]} Verbrauch auf dem ganzen Weg: ${COMMODITY_WORDS[commodity]} (${commodity === 'fuel' ? rounded(rate, 'l/100 km') : litresADay(rate)}).`,
  'hotter-than-told': ({ byC, waterLPerDay }) =>
    parts`${warmerBy(byC)} heißer als angegeben${waterLPerDay === null ? '' : parts` (${litresADay(waterLPerDay)})`}.`,
  'treatment-line-fails': ({ waters }) =>
    waters === 0
      ? parts`Die Aufbereitung fällt aus: kein benutztes Wasser zählt nur dank ihr, es ändert sich also nichts.`
      : parts`Die Aufbereitung fällt aus: ${waters === 1 ? 'ein benutztes Wasser zählt' : `${waters} benutzte Wasser zählen`} nicht mehr.`,
  'treatment-line-fails-under-way': ({ name }, say) =>
    parts`Die Aufbereitung fällt unterwegs aus: was bei ${called(name ?? 'der Versorgung', say)} unaufbereitet eingefüllt wurde, ist nicht trinkbar. Abkochen und Desinfizieren von Hand sind nicht gerechnet.`,
  'turning-round': ({ atM }) =>
    parts`Umkehren${atM === null ? '' : parts` bei ${exactPlace(atM)}`}, zurück zur Versorgung dahinter.`,
  'step-more-use': ({ percent }) => parts`${figure(percent, '%')} mehr Verbrauch`,
  'step-slower': ({ percent }) => parts`${figure(percent, '%')} langsamer`,
  'step-more-allowance': ({ points }) => parts`${points} Prozentpunkte mehr Zuschlag für Windungen`,
  'step-hotter': ({ byC }) => parts`${warmerBy(byC)} heißer`,
  'back-with-the-reserve': ({ commodity, atM, backTo }, say) =>
    parts`Vor ${exactPlace(atM)} kommt man noch bis ${namedPlace(backTo, say)} zurück, mit der Reserve an ${COMMODITY_WORDS[commodity]}.`,
} satisfies Partial<Catalogue['phrases']>;

const warmerBy = (degrees: number): Part[] =>
  parts`${{ figure: degrees, unit: '°C', difference: true } as const}`;
