import type { StagePhrases } from '../../../core/phrases/rig/treatment-stages.ts';
import type { Sayings } from '../../parts/catalogue.ts';
import { bare, figure, rounded } from '../../parts/figures.ts';
import { type Parts, parts } from '../../parts/part.ts';
import { GERMS, STAGES } from './germs.ts';

const number = (value: number) => figure(value, 'count');

const boilPlace = (at: StagePhrases['boil-long-enough']['at']): Parts =>
  at === null
    ? parts`wo die Höhe nicht bekannt ist`
    : parts`in ${rounded(at.altitudeM, 'm', 0)} Höhe, wo Wasser bei ${rounded(at.boilsAtC, '°C', 0)} kocht`;

/** Where the figures of a stage come from, or why it counts for nothing. */
export const STAGE_PHRASES: Sayings<StagePhrases> = {
  'may-have-frozen': () => parts`sie ist vielleicht gefroren`,
  'chlorine-before': () => parts`davor wird Chlor zugegeben, ohne Kohle dazwischen: das zerstört die Membran`,
  'no-carbon': () => parts`keine Kohle davor: das Chlor von Leitungswasser würde die Membran zerstören`,
  'life-used-up': ({ lifeL }) => parts`ihre ${figure(lifeL, 'l')} waren vor der Reise aufgebraucht`,
  'water-clogs': ({ ntu, standsNtu }) =>
    parts`Wasser mit ${number(ntu)} NTU verstopft sie, sie verträgt ${number(standsNtu)} NTU`,
  'dose-untold': () => parts`ihre Dosis wurde nicht angegeben`,
  'dose-too-weak': ({ mJPerCm2, neededMJPerCm2 }) =>
    parts`${number(mJPerCm2)} mJ/cm² genügen nur für Wasser, das schon trinkbar ist, ${number(neededMJPerCm2)} sind nötig (NSF/ANSI 55)`,
  'water-shades-light': ({ ntu, clearNtu }) =>
    parts`Wasser mit ${number(ntu)} NTU verdeckt das Licht, höchstens ${number(clearNtu)} NTU: erst filtern`,
  'water-too-fast': ({ lPerMin, ratedLPerMin }) =>
    parts`das Wasser läuft mit ${rounded(lPerMin, 'l', 2)}/min, ihre Dosis ist für ${bare(figure(ratedLPerMin, 'l'))}: den Hahn drosseln`,
  'ph-too-high': ({ ph, belowPh }) => parts`pH ${number(ph)}, muss unter ${number(belowPh)} liegen (WHO)`,
  'too-cloudy-for-chlorine': ({ ntu }) => parts`Wasser mit ${number(ntu)} NTU ist zu trüb: erst klären (WHO)`,
  'chlorine-too-little': ({ mgPerLitre, neededMgPerLitre }) =>
    parts`${number(mgPerLitre)} mg/l, dieses Wasser braucht ${number(neededMgPerLitre)} (Lantagne 2008, EPA)`,
  'time-untold': () => parts`ihre Zeit wurde nicht angegeben`,
  'contact-too-short': ({ minutes, neededMinutes }) =>
    parts`${number(minutes)} Minuten, mindestens ${number(neededMinutes)} sind nötig (WHO)`,
  'boil-too-short': ({ minutes, neededMinutes, at }) =>
    parts`${number(minutes)} min sprudelnd gekocht, ${number(neededMinutes)} sind nötig ${boilPlace(at)} (CDC)`,

  'as-stated': () => parts`wie angegeben`,
  'stops-percent': ({ percent }) => parts`hält ${figure(percent, '%')} zurück, wie angegeben`,
  'usual-for-kind': ({ kind }) => parts`üblich für: ${STAGES[kind]} (WHO, aus dem Gedächtnis)`,
  'by-dose': ({ mJPerCm2, germs }) =>
    germs === 'bacteria'
      ? parts`üblich für eine Lampe mit ${number(mJPerCm2)} mJ/cm² (WHO, aus dem Gedächtnis)`
      : parts`was ${number(mJPerCm2)} mJ/cm² angerechnet wird (US EPA, LT2ESWTR)`,
  'viruses-pass-filters': () =>
    parts`kein Filter gilt als Hindernis für sie, wenn sein Hersteller es nicht sagt (CDC)`,
  'neither-log-nor-pores': () => parts`weder log-Reduktion noch Porengröße wurde angegeben`,
  'pores-too-wide': ({ poreMicron, mostMicron }) =>
    parts`Poren von ${number(poreMicron)} µm, nötig sind ${number(mostMicron)} µm oder weniger (CDC)`,
  'pores-narrow': ({ poreMicron, mostMicron }) =>
    parts`Poren von ${number(poreMicron)} µm, ${number(mostMicron)} µm oder weniger (CDC)`,
  'pores-of-ultrafilter': ({ poreMicron }) =>
    parts`Poren von ${number(poreMicron)} µm, ein Ultrafilter (WHO, aus dem Gedächtnis)`,

  'cloudiness-untold': ({ stage }) => parts`${stage}: welche Trübung sie verträgt, wurde nicht angegeben`,
  'flow-taken': ({ stage, ratedLPerMin }) =>
    parts`${stage}: das Wasser gilt als nicht schneller als ${figure(ratedLPerMin, 'l')}/min`,
  'ph-taken': ({ stage, belowPh }) => parts`${stage}: der pH gilt als unter ${number(belowPh)}`,
  'warmth-taken': ({ stage }) => parts`${stage}: das Wasser gilt als nicht sehr kalt`,

  'counts-for-nothing': ({ why }, say) => parts`zählt nicht: ${say(why)}`,
  'stage-credit': ({ germs, log, why }, say) =>
    parts`${GERMS[germs]} ${rounded(log, 'count', 2)}: ${say(why)}`,
  'drops-of-bleach': ({ mgPerLitre, dropsPerLitre, bleachPercent, mlPer10L }) =>
    parts`${rounded(mgPerLitre, 'count', 1)} mg/l sind ${rounded(dropsPerLitre, 'count', 2)} Tropfen Bleiche von ${figure(bleachPercent, '%')} je Liter (20 Tropfen je ml), ${rounded(mlPer10L, 'count', mlPer10L < 1 ? 2 : 1)} ml für ${figure(10, 'l')}`,
  'better-below': ({ ntu }) => parts`besser unter ${number(ntu)} NTU (WHO)`,
  'boil-long-enough': ({ minutes, neededMinutes, at }) =>
    parts`${number(minutes)} min sprudelnd gekocht, nötig sind ${number(neededMinutes)} ${boilPlace(at)} (CDC)`,
  'stricter-height': () =>
    parts`die EPA nennt 5.000 Fuß und 1.000 m als dieselbe Höhe, ab der sie 3 min verlangt`,
};
