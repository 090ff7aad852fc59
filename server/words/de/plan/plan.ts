import type { LaidDepot, NamedStop, OtherStop } from '../../../core/phrases/plan/plan.ts';
import { COMMODITIES } from '../../../core/quantity/commodities.ts';
import type { Catalogue, Say } from '../../parts/catalogue.ts';
import { exactPlace, figure, fixed, kmOf, placeAt, rounded, upToTenth } from '../../parts/figures.ts';
import { metricText } from '../../parts/metric.ts';
import { joined, type Part, type Parts, parts } from '../../parts/part.ts';
import { listed } from '../shared/numbers.ts';
import { called, namedPlace } from '../shared/places.ts';
import { COMMODITY_WORDS, cansText, EVIDENCE_WORDS } from '../shared/words.ts';

export const PLAN_CAUTIONS = {
  'plan-lets-go': ({ commodity, litres }) =>
    parts`${rounded(upToTenth(litres), 'l')} ${COMMODITY_WORDS[commodity]} müssen hier abgelassen werden: mit allem davon und den anderen Füllungen würde eine zulässige Masse überschritten.`,
  'plan-across-no-data': ({ commodity }) =>
    parts`Kein Auszug zeigt auf einem Teil dieses Abschnitts ${COMMODITY_WORDS[commodity]}: der Plan nimmt ihn als trocken.`,
  'plan-across-sketch': ({ commodity }) =>
    parts`Ein Teil dieses Abschnitts ist eine gerade Linie, wo eine Straße gemeint ist: wie viel ${COMMODITY_WORDS[commodity]} er braucht, ist geschätzt.`,
  'plan-cans-at-start': ({ commodity, cans }) =>
    parts`${cansText(cans, commodity)} ${cans === 1 ? 'ist' : 'sind'} vor dem Start zu füllen.`,
  'plan-waits-for-opening': ({ name, hours }, say) =>
    parts`Bis zu ${rounded(upToTenth(hours), 'h')} Warten, bis ${called(name ?? 'eine Versorgung', say)} öffnet, sind nach den verzeichneten Öffnungszeiten eingerechnet. Fragen, und angeben, wie lange das Warten dauert.`,
  'plan-weak-evidence': ({ name, evidence }, say) =>
    parts`${called(name ?? 'Eine Versorgung', say)} ist nur als ${EVIDENCE_WORDS[evidence]} bekannt: anrufen, bevor es darauf ankommt.`,
  'plan-onward-unknown': ({ commodity }) =>
    parts`Wie weit es nach dem Ende bis zur nächsten Versorgung mit ${COMMODITY_WORDS[commodity]} ist, wurde nicht angegeben: der Plan reicht bis zum Ende der Route und nicht weiter.`,
  'plan-ways-left-out': () =>
    parts`Es gibt sehr viele Wege über die Versorgungen, die nicht alles geben, was gewünscht ist: nur die mit dem meisten an Bord für das wenigste wurden geprüft. Ein anderer kann besser sein.`,
  'plan-cans-to-get': ({ commodity, cans, owned }) =>
    parts`${cansText(cans, commodity)} mehr ${cans === 1 ? 'ist' : 'sind'} zu besorgen: vorhanden ${owned === 1 ? 'ist 1' : `sind ${owned}`}.`,
  'water-not-planned': () =>
    parts`Wasser ist nicht geplant: kein Auszug sagt etwas darüber. Dieser Plan gilt nur für den Kraftstoff; erst herausfinden, wo es Wasser gibt, oder alles mitführen, was getrunken wird`,
  'fuel-not-planned': () =>
    parts`Kraftstoff ist nicht geplant: kein Auszug sagt etwas darüber. Dieser Plan gilt nur für das Wasser; erst herausfinden, wo es Kraftstoff gibt, oder alles mitführen, was verbraucht wird`,
  'plan-supplies-left-out': ({ commodity, passings, lookedAt, withinM }) =>
    parts`Von ${passings} Vorbeifahrten an Versorgungen mit ${COMMODITY_WORDS[commodity]} prüft der Plan ${lookedAt}: jede weggelassene hat binnen ${figure(kmOf(withinM), 'km')} eine andere, die ebenso gut bekannt und nicht weiter weg ist. Ein Plan mit einer der weggelassenen kann besser sein.`,
  'can-place-unknown': ({ commodity }) =>
    parts`Ob Kanister mit ${COMMODITY_WORDS[commodity]} in der Kabine stehen, lässt sich nicht sagen: angeben, wo sie und die Kabine sind.`,
  'plan-stop-unknown': ({ stops }, say) =>
    parts`Was über ${namesOf(stops, say)} angegeben ist, nützt nichts: die Route kommt nicht vorbei.`,
  'plan-must-stop-uncounted': ({ stops }, say) =>
    parts`Der Plan muss halten bei ${namesOf(stops, say)}, was nicht zählt: nachsehen, warum, und bestätigen, was Sie herausgefunden haben.`,
  'plan-stop-shut': ({ stops }, say) =>
    parts`Weggelassen, weil nach den verzeichneten Öffnungszeiten in den Tagen nach der möglichen Ankunft nicht offen ist: ${namesOf(stops, say)}. Fragen, und angeben, wie lange das Warten dauert.`,
  'plan-treats-too-little': ({ stops }, say) =>
    parts`Weggelassen, weil die Anlage an einem ganzen Tag weniger aufbereitet, als getrunken wird: ${namesOf(stops, say)}.`,
  'plan-night-at-supply': ({ name }, say) =>
    parts`Die Nacht wird bei ${called(name ?? 'der Versorgung', say)} verbracht, mit deren Wasser; wer am selben Tag weiterfährt, verbringt eine unterwegs, mit dem, was mitgeführt wird.`,
  'plan-flows-too-little': ({ stops }, say) =>
    parts`Füllt nichts, weil es an einem ganzen Tag nicht mehr gibt, als währenddessen verbraucht wird: ${namesOf(stops, say)}.`,
  'plan-flow-unknown': ({ stops }, say) =>
    parts`Wie schnell die Aufbereitung läuft, ist nicht bekannt: Aufbereiten kostet hier keine Zeit (${namesOf(stops, say)}).`,
  'plan-untreated-water': ({ stops }, say) =>
    parts`Erst am Hahn aufbereitet, deshalb nicht in den Kanistern für Trinkwasser: ${namesOf(stops, say)}.`,
} satisfies Partial<Catalogue['cautions']>;

/** No more than this are named (ours). */
const NAMED = 4;

/** Each name once. */
function namesOf(stops: readonly NamedStop[], say: Say): Part[] {
  const names = new Map<string, Parts>();
  for (const stop of stops) {
    const name = 'name' in stop ? parts`${stop.name}` : parts`${say(stop.kind)} bei ${placeAt(stop.atM, 0)}`;
    const text = metricText(name);
    if (!names.has(text)) names.set(text, name);
  }
  return firstOf([...names.values()], ', ');
}

/** The first of some names, and how many more there are: a stop in a town may have dozens. */
function firstOf(names: readonly Parts[], between: string): Part[] {
  const more = names.length - NAMED;
  const named = joined(names.slice(0, NAMED), between);
  return more > 0 ? parts`${named} und ${more} weitere` : named;
}

const PERMITTED_WORDS = {
  total: 'der zulässigen Masse',
  front: 'der zulässigen Last der Vorderachse',
  rear: 'der zulässigen Last der Hinterachse',
} as const;

export const PLAN_PHRASES = {
  'stretch-lacks': ({ commodity, from, to, missingL, cans, startL, littleLeftOut }, say) => {
    const tanks =
      startL === null ? parts`vollen Tanks` : parts`den ${rounded(startL, 'l')} an Bord am Anfang`;
    const little = littleLeftOut ? ', das Wenige unterwegs nicht mitgezählt' : '';
    return parts`Von ${namedPlace(from, say)} bis ${namedPlace(to, say)} fehlen ${rounded(upToTenth(missingL), 'l')} ${COMMODITY_WORDS[commodity]} mit ${tanks} und ${cans} ${cans === 1 ? 'Kanister' : 'Kanistern'}${little}.`;
  },
  'masses-forbid': () =>
    parts`Mit den Kanistern, die nötig sind, überschreitet das Fahrzeug eine zulässige Masse.`,
  'over-at-start': ({ mass, overKg, lessL }) => {
    const less = COMMODITIES.flatMap((commodity) => {
      const litres = lessL[commodity];
      return litres === null ? [] : [parts`${rounded(upToTenth(litres), 'l')} ${COMMODITY_WORDS[commodity]}`];
    });
    const fluids = less.length === 0 ? '' : parts`, oder mit ${joined(less, ' oder ')} weniger starten`;
    return parts`Am Anfang liegt das Fahrzeug ${rounded(upToTenth(overKg), 'kg')} über ${PERMITTED_WORDS[mass]}, ohne einen vollen Kanister: so viel zurücklassen${fluids}.`;
  },
  'detours-forbid': () =>
    parts`Kraftstoff allein und Wasser allein gingen; die Umwege zu beidem zusammen brauchen mehr, als da ist.`,
  'together-not-found-out': () =>
    parts`Kraftstoff allein und Wasser allein gingen; ob die Umwege zu beidem oder eine zulässige Masse es verbieten, wurde in der verfügbaren Zeit nicht herausgefunden.`,
  'plans-hang-on': ({ names, atM }, say) =>
    parts`Jeder Plan hängt an ${firstOf(
      names.map((name) => called(name ?? 'einer Versorgung', say)),
      ' und ',
    )} (${placeAt(atM, 0)}): ist dort nichts zu bekommen, wird weder die nächste Versorgung noch die davor erreicht.`,
  'with-filling-first': ({ fills }) =>
    parts`Vor der Abfahrt mindestens ${joined(
      fills.map(({ commodity, litres }) => parts`${rounded(litres, 'l')} ${COMMODITY_WORDS[commodity]}`),
      ' und ',
    )} füllen: dann geht es.`,
  'with-more-cans': ({ cans, moreKg }) =>
    parts`Mit ${listed(cans.map(({ commodity, count }) => cansText(count, commodity, true)))} mehr geht es: ${rounded(moreKg, 'kg', 0)} mehr, wenn sie voll sind.`,
  'with-less-washing': ({ cutPercent, savedL }) => {
    const given =
      cutPercent === 100
        ? parts`Ohne Waschen und Duschen`
        : parts`Mit ${figure(cutPercent, '%')} weniger Wasser zum Waschen und Duschen`;
    return parts`${given}, Zähne, Hände und Wunden ausgenommen, wird ${fixed(savedL, 'l')} pro Tag weniger verbraucht, und es geht. Trinkwasser bleibt, wie es ist.`;
  },
  'with-longer-days': ({ hours, insteadOfHours }) =>
    parts`Mit ${rounded(hours, 'h', 2)} Fahrt am Tag statt ${rounded(insteadOfHours, 'h', 2)} geht es: der Weg braucht weniger Tage, also weniger Wasser. Mit schnellerem Fahren wird nie gerechnet.`,
  'with-depots': ({ depots }, say) =>
    parts`${joined(
      depots.map((depot) => laidDepot(depot, say)),
      '; ',
    )}: so geht es.`,
  'by-other-stops': ({ stops }, say) => byOtherStops(stops, say),
} satisfies Partial<Catalogue['phrases']>;

function laidDepot({ commodity, cans, litres, atM, latestFrom }: LaidDepot, say: Say): Part[] {
  const why =
    latestFrom === null
      ? ''
      : parts`, die letzte Stelle, die mit der Reserve von ${namedPlace(latestFrom, say)} aus erreicht wird`;
  return parts`${cansText(cans, commodity)} (${rounded(litres, 'l')}), vorher angelegt bei ${exactPlace(atM)}${why}`;
}

function byOtherStops(stops: readonly OtherStop[], say: Say): Part[] {
  const named = (stop: OtherStop) => otherStop(stop, say);
  const toCall = stops.filter(({ counts }) => !counts);
  if (toCall.length === 0) return parts`Über ${joined(stops.map(named), ' und ')} geht es.`;
  const others = stops.filter(({ counts }) => counts).map(named);
  const has = toCall.map(
    (stop) => parts`${named(stop)} brauchbares (${COMMODITY_WORDS[stop.commodity]}) hat`,
  );
  const beside = others.length === 0 ? '' : parts`, auch über ${joined(others, ' und ')}`;
  return parts`Erst anrufen: wenn ${joined(has, ' und ')}, geht es${beside}. So, wie es verzeichnet ist, zählt es nicht.`;
}

const otherStop = ({ name, kind, atM, detourM }: OtherStop, say: Say): Part[] =>
  parts`${name ?? say(kind)} (${placeAt(atM, 0)}, ${fixed(kmOf(2 * detourM), 'km')} hin und zurück)`;
