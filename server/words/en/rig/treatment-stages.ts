import type { StagePhrases } from '../../../core/phrases/rig/treatment-stages.ts';
import type { Sayings } from '../../parts/catalogue.ts';
import { bare, figure, rounded } from '../../parts/figures.ts';
import { type Parts, parts } from '../../parts/part.ts';

const boilPlace = (at: StagePhrases['boil-long-enough']['at']): Parts =>
  at === null
    ? parts`where the height is not known`
    : parts`at ${rounded(at.altitudeM, 'm', 0)}, where water boils at ${rounded(at.boilsAtC, '°C', 0)}`;

/** Where the figures of a stage come from, or why it counts for nothing. */
export const STAGE_PHRASES: Sayings<StagePhrases> = {
  'may-have-frozen': () => parts`it may have frozen`,
  'chlorine-before': () =>
    parts`chlorine is dosed before it with no carbon between: that destroys the membrane`,
  'no-carbon': () =>
    parts`no carbon stands before it: the chlorine of piped water would destroy the membrane`,
  'life-used-up': ({ lifeL }) => parts`its ${figure(lifeL, 'l')} were used up before the trip`,
  'water-clogs': ({ ntu, standsNtu }) => parts`water of ${ntu} NTU clogs it, it stands ${standsNtu} NTU`,
  'dose-untold': () => parts`its dose was not told`,
  'dose-too-weak': ({ mJPerCm2, neededMJPerCm2 }) =>
    parts`${mJPerCm2} mJ/cm2 serve only water already fit to drink, ${neededMJPerCm2} are needed (NSF/ANSI 55)`,
  'water-shades-light': ({ ntu, clearNtu }) =>
    parts`water of ${ntu} NTU shades the light, ${clearNtu} NTU at most: filter it first`,
  'water-too-fast': ({ lPerMin, ratedLPerMin }) =>
    parts`water runs at ${rounded(lPerMin, 'l', 2)}/min, its dose is for ${bare(figure(ratedLPerMin, 'l'))}: throttle the tap`,
  'ph-too-high': ({ ph, belowPh }) => parts`pH ${ph}, must be below ${belowPh} (WHO)`,
  'too-cloudy-for-chlorine': ({ ntu }) => parts`water of ${ntu} NTU is too cloudy: clear it first (WHO)`,
  'chlorine-too-little': ({ mgPerLitre, neededMgPerLitre }) =>
    parts`${mgPerLitre} mg/l, this water needs ${neededMgPerLitre} (Lantagne 2008, EPA)`,
  'time-untold': () => parts`its time was not told`,
  'contact-too-short': ({ minutes, neededMinutes }) =>
    parts`${minutes} minutes, at least ${neededMinutes} are needed (WHO)`,
  'boil-too-short': ({ minutes, neededMinutes, at }) =>
    parts`${minutes} min of rolling boil, ${neededMinutes} are needed ${boilPlace(at)} (CDC)`,

  'as-stated': () => parts`as stated`,
  'stops-percent': ({ percent }) => parts`stops ${figure(percent, '%')} as stated`,
  'usual-for-kind': ({ kind }) => parts`usual for ${kind} (WHO, from memory)`,
  'by-dose': ({ mJPerCm2, germs }) =>
    germs === 'bacteria'
      ? parts`usual for a lamp of ${mJPerCm2} mJ/cm2 (WHO, from memory)`
      : parts`what ${mJPerCm2} mJ/cm2 are credited with (US EPA, LT2ESWTR)`,
  'viruses-pass-filters': () => parts`no filter is taken to stop them unless its maker says so (CDC)`,
  'neither-log-nor-pores': () => parts`neither log reduction nor pore size was told`,
  'pores-too-wide': ({ poreMicron, mostMicron }) =>
    parts`${poreMicron} µm pores, needs ${mostMicron} µm or less (CDC)`,
  'pores-narrow': ({ poreMicron, mostMicron }) =>
    parts`${poreMicron} µm pores, ${mostMicron} µm or less (CDC)`,
  'pores-of-ultrafilter': ({ poreMicron }) =>
    parts`${poreMicron} µm pores, an ultrafilter (WHO, from memory)`,

  'cloudiness-untold': ({ stage }) => parts`${stage}: what cloudiness it stands was not told`,
  'flow-taken': ({ stage, ratedLPerMin }) =>
    parts`${stage}: water taken as no faster than ${figure(ratedLPerMin, 'l')}/min`,
  'ph-taken': ({ stage, belowPh }) => parts`${stage}: pH taken as below ${belowPh}`,
  'warmth-taken': ({ stage }) => parts`${stage}: water taken as not very cold`,

  'counts-for-nothing': ({ why }, say) => parts`counts for nothing: ${say(why)}`,
  'stage-credit': ({ germs, log, why }, say) => parts`${germs} ${rounded(log, 'count', 2)}: ${say(why)}`,
  'drops-of-bleach': ({ mgPerLitre, dropsPerLitre, bleachPercent, mlPer10L }) =>
    parts`${rounded(mgPerLitre, 'count', 1)} mg/l are ${rounded(dropsPerLitre, 'count', 2)} drops of ${figure(bleachPercent, '%')} bleach a litre (20 drops a ml), ${rounded(mlPer10L, 'count', mlPer10L < 1 ? 2 : 1)} ml for ${figure(10, 'l')}`,
  'better-below': ({ ntu }) => parts`better below ${ntu} NTU (WHO)`,
  'boil-long-enough': ({ minutes, neededMinutes, at }) =>
    parts`${minutes} min of rolling boil, ${neededMinutes} needed ${boilPlace(at)} (CDC)`,
  'stricter-height': () =>
    parts`EPA prints 5,000 feet and 1,000 m for one height from which it asks for 3 min`,
};
