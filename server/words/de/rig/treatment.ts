import type { Catalogue } from '../../parts/catalogue.ts';
import { bare, figure, rounded } from '../../parts/figures.ts';
import { joined, parts } from '../../parts/part.ts';
import { GERMS, TAP_USES, targetWords } from './germs.ts';

/** What to know about a treatment line on a trip. */
export const TREATMENT_CAUTIONS = {
  'treatment-below-target': ({ target, lacks }) => {
    const missing = lacks.map(({ germs, log }) => parts`${GERMS[germs]} um ${rounded(log, 'count', 2)} log`);
    return parts`Die Aufbereitung bleibt auch bei klarem Wasser hinter ihrem Ziel (${targetWords(target)}) zurück: ${joined(missing, ', ')}.`;
  },
  'treatment-unmeasured': ({ conditions }, say) =>
    parts`Die Aufbereitung ist mit dem gerechnet, was niemand gemessen hat: ${joined(conditions.map(say), '; ')}.`,
  'treatment-frozen': ({ stages }) =>
    parts`Vielleicht gefroren, zählt deshalb nicht, bis es geprüft oder getauscht ist: ${stages.join(', ')}.`,
  'treatment-may-freeze': ({ nightC }) =>
    parts`Nächte von ${figure(nightC, '°C')} können Membranen zerreißen, ohne dass man es sieht: die Anlage entleeren oder warm halten, und sie nicht mehr zählen, wenn sie einmal gefroren ist.`,
  'boiling-height-unknown': () =>
    parts`Die Höhen der Route sind nicht bekannt, deshalb gilt beim Abkochen die längere Regel: 3 Minuten, wie über 2.000 m (CDC).`,
  'tap-flow-unknown': ({ tap, missing }, say) =>
    parts`Der Durchfluss am Hahn ${tap} lässt sich nicht schätzen: nicht angegeben ist ${joined(missing.map(say), ', ')}. Messen, oder das eintragen.`,
  'tap-starves': ({ tap, use, lPerMin, leastLPerMin }) =>
    parts`Hahn ${tap} bekommt zu wenig: ${rounded(lPerMin, 'l', 2)}/min, ein Hahn für ${TAP_USES[use]} braucht ${bare(figure(leastLPerMin, 'l'))} (unsere Annahme).`,
  'tap-not-drinking': ({ tap, use }) =>
    parts`Hahn ${tap} (${TAP_USES[use]}) liegt vor der Stelle, an der das Ziel erreicht ist: nur für Wasser, das schon trinkbar ist.`,
  'cartridge-spent': ({ name, litres, beyondL, backwash }) =>
    parts`${name} reicht nicht für die Reise: ${rounded(litres, 'l', 0)} laufen hindurch, ${rounded(beyondL, 'l', 0)} mehr, als noch darin steckt. ${backwash ? 'Unterwegs rückspülen, oder einen Ersatz mitführen' : 'Einen Ersatz mitführen'}.`,
  'treatment-at-tap': () =>
    parts`Aufbereitet wird am Hahn: Tank und Leitungen davor enthalten Rohwasser und bleiben von dieser Klasse, bis sie gereinigt und desinfiziert sind (WHO/WEDC Technical Note 3).`,
  'osmosis-waste': ({ feed }) =>
    parts`Die Umkehrosmose nimmt ${rounded(feed, 'l', 2)} aus dem Tank für jeden Liter am Hahn; der Bedarf an Trinkwasser ist damit gerechnet.`,
} satisfies Partial<Catalogue['cautions']>;

/** Labels of pressures and litres. */
export const TREATMENT_PHRASES = {
  'pump-untold': () => parts`die Pumpe`,
  'drop-untold': ({ stage }) => parts`der Druckverlust von ${stage}`,
  'hose-of': ({ lengthM, boreMm }) =>
    parts`Schlauch von ${figure(lengthM, 'm')}, ${figure(boreMm, 'count')} mm`,
  'tap-named': ({ name }) => parts`Hahn ${name}`,
  'pump-at-flow': () => parts`Pumpe bei diesem Durchfluss`,
  'days-at-rate': ({ days, litresPerDay }) =>
    parts`${rounded(days, 'days')} zu ${figure(litresPerDay, 'l')} pro Tag`,
  'thrown-away': () => parts`von der Umkehrosmose weggeschüttet`,
} satisfies Partial<Catalogue['phrases']>;
