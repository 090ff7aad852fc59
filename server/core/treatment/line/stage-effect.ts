import { GERM_CLASSES, type GermClass, type Logs, type StageKind } from '../../../contract/treatment.ts';
import type {
  CreditSource,
  StageRefusal,
  StageRemark,
  UntoldCondition,
} from '../../phrases/rig/treatment-stages.ts';
import { boilingPointC, boilMinutes, HIGH_ABOVE_M, STRICTER_ABOVE_M } from './disinfecting/boiling.ts';
import { CHLORINE, type ChlorineWater, doseNeeded, dropsPerLitre, mlFor } from './disinfecting/chlorine.ts';
import { UV_CLASS_A, uvLog } from './disinfecting/uv.ts';
import { logOfPercent, NO_LOGS } from './logs.ts';
import type { Stage } from './treatment.ts';

/** The water that meets a stage, and how fast it goes; null for what nobody knows. */
export interface Conditions extends ChlorineWater {
  /** The highest place at which it may be boiled, metres. */
  altitudeM: number | null;
  flowLPerMin: number | null;
}

export interface StageEffect {
  name: string;
  logs: Logs;
  /** Where each figure comes from, or why the stage counts for nothing. */
  why: StageRemark[];
  /** Why the stage counts for nothing; null where it counts. */
  nothing: StageRefusal | null;
  leavesNtu: number;
  desalts: boolean;
  /** Whether the water is too cloudy to go through. */
  clogs: boolean;
  /** Conditions that nobody told and that were taken as met. */
  unmeasured: UntoldCondition[];
}

interface Credit {
  log: number;
  why: CreditSource;
}

/** Pore sizes, absolute, micrometres: CDC, backcountry guide. Protozoa "high", bacteria "moderate", viruses not at all. */
const PORE = { protozoa: 1, bacteria: 0.3 };
/** Ultrafilters have pores below this (from memory). */
const ULTRA_BELOW_MICRON = 0.1;
/**
 * What those words are worth in log. Protozoa: the purifier criterion, as cyst reduction is tested (99.9 %). Bacteria:
 * WHO, Guidelines for drinking-water quality, 4th ed., table 7.8, low end for micro- and ultrafilters (from memory).
 */
const PORE_LOGS = { protozoa: 3, bacteria: 2, bacteriaUltra: 3 };
/** A filter this fine leaves clear water (ours; membranes do far better). */
const CLEARS = { poreMicron: 0.3, ntu: 0.5 };

/** The low end of the same table for what is no filter (from memory); chlorine: CDC, not effective against Cryptosporidium. */
const KIND_LOGS: Partial<Record<StageKind, Logs>> = {
  chlorine: { bacteria: 3, viruses: 3, protozoa: 0 },
  boiling: { bacteria: 6, viruses: 6, protozoa: 6 },
};

/** "Visually clear" in figures (ours). */
const UV_CLEAR_NTU = 1;

/** What one stage does to a water that comes to it. */
export function stageEffect(stage: Stage, water: Conditions): StageEffect {
  const effect: StageEffect = {
    name: stage.name,
    logs: NO_LOGS,
    why: [],
    nothing: null,
    leavesNtu: water.turbidityNtu,
    desalts: false,
    clogs: false,
    unmeasured: [],
  };
  const nothing = (why: StageRefusal): StageEffect => ({
    ...effect,
    why: [{ phrase: 'counts-for-nothing', facts: { why } }],
    nothing: why,
  });
  if (stage.mayHaveFrozen) return nothing({ phrase: 'may-have-frozen', facts: {} });
  if (stage.fault !== null) return nothing({ phrase: stage.fault, facts: {} });
  if (stage.lifeLitres !== undefined && (stage.usedLitres ?? 0) >= stage.lifeLitres) {
    return nothing({ phrase: 'life-used-up', facts: { lifeL: stage.lifeLitres } });
  }
  const refused = CONDITIONS[stage.kind]?.(stage, water, effect) ?? null;
  if (refused !== null) return nothing(refused);
  const clogged = isFilter(stage) ? filtered(stage, water, effect) : null;
  if (clogged !== null) return { ...nothing(clogged), clogs: clogged.phrase === 'water-clogs' };
  const credits = GERM_CLASSES.map((germs) => [germs, creditOf(stage, germs)] as const);
  effect.logs = Object.fromEntries(credits.map(([germs, credit]) => [germs, credit.log])) as Logs;
  for (const [germs, { log, why }] of credits) {
    effect.why.push({ phrase: 'stage-credit', facts: { germs, log, why } });
  }
  return effect;
}

/** What a filter does to the water, into the effect; why it lets nothing through or counts for nothing, else null. */
function filtered(stage: Stage, water: Conditions, effect: StageEffect): StageRefusal | null {
  const fast = tooFast(stage, water, effect);
  if (fast !== null) return fast;
  const { turbidityNtu: ntu } = water;
  const { standsNtu } = stage;
  if (standsNtu !== undefined && ntu > standsNtu) return { phrase: 'water-clogs', facts: { ntu, standsNtu } };
  if (standsNtu === undefined && ntu > CHLORINE.belowNtu) {
    effect.unmeasured.push({ phrase: 'cloudiness-untold', facts: { stage: stage.name } });
  }
  effect.leavesNtu = Math.min(ntu, leftNtu(stage));
  effect.desalts = stage.kind === 'reverse-osmosis';
  return null;
}

const isFilter = (stage: Stage): boolean => stage.kind !== 'uv' && KIND_LOGS[stage.kind] === undefined;

function leftNtu(stage: Stage): number {
  if (stage.leavesNtu !== undefined) return stage.leavesNtu;
  return stage.poreMicron !== undefined && stage.poreMicron <= CLEARS.poreMicron ? CLEARS.ntu : Infinity;
}

function creditOf(stage: Stage, germs: GermClass): Credit {
  if (stage.kind === 'uv' && (stage.doseMJPerCm2 ?? 0) < UV_CLASS_A) return byDose(stage, germs);
  const log = stage.logs?.[germs];
  if (log !== undefined) return { log, why: { phrase: 'as-stated', facts: {} } };
  const percent = stage.stopsPercent?.[germs];
  if (percent !== undefined)
    return { log: logOfPercent(percent), why: { phrase: 'stops-percent', facts: { percent } } };
  if (stage.kind === 'uv') return byDose(stage, germs);
  const byKind = KIND_LOGS[stage.kind];
  if (byKind !== undefined)
    return { log: byKind[germs], why: { phrase: 'usual-for-kind', facts: { kind: stage.kind } } };
  return byPore(stage.poreMicron, germs);
}

function byDose({ doseMJPerCm2: mJPerCm2 = 0 }: Stage, germs: GermClass): Credit {
  const isWeak = mJPerCm2 < UV_CLASS_A && germs !== 'protozoa';
  const facts = { mJPerCm2, neededMJPerCm2: UV_CLASS_A };
  return {
    log: uvLog(mJPerCm2, germs),
    why: isWeak ? { phrase: 'dose-too-weak', facts } : { phrase: 'by-dose', facts: { mJPerCm2, germs } },
  };
}

function byPore(poreMicron: number | undefined, germs: GermClass): Credit {
  if (germs === 'viruses') return { log: 0, why: { phrase: 'viruses-pass-filters', facts: {} } };
  if (poreMicron === undefined) return { log: 0, why: { phrase: 'neither-log-nor-pores', facts: {} } };
  const facts = { poreMicron, mostMicron: PORE[germs] };
  if (poreMicron > PORE[germs]) return { log: 0, why: { phrase: 'pores-too-wide', facts } };
  const narrow: CreditSource = { phrase: 'pores-narrow', facts };
  if (germs === 'protozoa') return { log: PORE_LOGS.protozoa, why: narrow };
  return poreMicron < ULTRA_BELOW_MICRON
    ? { log: PORE_LOGS.bacteriaUltra, why: { phrase: 'pores-of-ultrafilter', facts: { poreMicron } } }
    : { log: PORE_LOGS.bacteria, why: narrow };
}

/** Faster than a lamp or a filter is rated for. What a membrane makes is no rating: it makes no more. */
function tooFast(stage: Stage, water: Conditions, effect: StageEffect): StageRefusal | null {
  const { flowLPerMin: ratedLPerMin } = stage;
  if (ratedLPerMin === undefined || stage.kind === 'reverse-osmosis') return null;
  if (water.flowLPerMin === null) {
    effect.unmeasured.push({ phrase: 'flow-taken', facts: { stage: stage.name, ratedLPerMin } });
    return null;
  }
  return water.flowLPerMin > ratedLPerMin
    ? { phrase: 'water-too-fast', facts: { lPerMin: water.flowLPerMin, ratedLPerMin } }
    : null;
}

/** Why a stage counts for nothing in a water, null when its conditions are met; remarks go into the effect. */
type Condition = (stage: Stage, water: Conditions, effect: StageEffect) => StageRefusal | null;

const CONDITIONS: Partial<Record<StageKind, Condition>> = {
  uv(stage, water, effect) {
    const dose = stage.doseMJPerCm2;
    if (dose === undefined) return { phrase: 'dose-untold', facts: {} };
    const clearNtu = stage.standsNtu ?? UV_CLEAR_NTU;
    if (water.turbidityNtu > clearNtu) {
      return { phrase: 'water-shades-light', facts: { ntu: water.turbidityNtu, clearNtu } };
    }
    return tooFast(stage, water, effect);
  },

  chlorine(stage, water, effect) {
    const { ph, turbidityNtu: ntu } = water;
    const { belowPh, idealNtu } = CHLORINE;
    if (ph !== null && ph >= belowPh) return { phrase: 'ph-too-high', facts: { ph, belowPh } };
    const dose = doseNeeded(water, stage.standsNtu ?? null);
    if (dose === null) return { phrase: 'too-cloudy-for-chlorine', facts: { ntu } };
    const { mgPerLitre, minutes } = stage;
    if (mgPerLitre === undefined) return { phrase: 'dose-untold', facts: {} };
    if (mgPerLitre < dose) {
      return { phrase: 'chlorine-too-little', facts: { mgPerLitre, neededMgPerLitre: dose } };
    }
    if (minutes === undefined) return { phrase: 'time-untold', facts: {} };
    if (minutes < CHLORINE.minutes) {
      return { phrase: 'contact-too-short', facts: { minutes, neededMinutes: CHLORINE.minutes } };
    }
    const bleachPercent = stage.productPercent ?? BLEACH_PERCENT;
    const drops = dropsPerLitre(mgPerLitre, bleachPercent);
    effect.why.push({
      phrase: 'drops-of-bleach',
      facts: {
        mgPerLitre,
        dropsPerLitre: drops,
        bleachPercent,
        mlPer10L: mlFor(mgPerLitre, bleachPercent, 10),
      },
    });
    if (ntu >= idealNtu) effect.why.push({ phrase: 'better-below', facts: { ntu: idealNtu } });
    const { name } = stage;
    if (ph === null) effect.unmeasured.push({ phrase: 'ph-taken', facts: { stage: name, belowPh } });
    if (water.temperatureC === null) {
      effect.unmeasured.push({ phrase: 'warmth-taken', facts: { stage: name } });
    }
    return null;
  },

  boiling(stage, water, effect) {
    const { altitudeM } = water;
    const { minutes } = stage;
    const neededMinutes = boilMinutes(altitudeM);
    if (minutes === undefined) return { phrase: 'time-untold', facts: {} };
    const at = altitudeM === null ? null : { altitudeM, boilsAtC: boilingPointC(altitudeM) };
    const facts = { minutes, neededMinutes, at };
    if (minutes < neededMinutes) return { phrase: 'boil-too-short', facts };
    effect.why.push({ phrase: 'boil-long-enough', facts });
    if (altitudeM !== null && altitudeM > STRICTER_ABOVE_M && altitudeM <= HIGH_ABOVE_M) {
      effect.why.push({ phrase: 'stricter-height', facts: {} });
    }
    return null;
  },
};

/** Household bleach of the EPA leaflet, percent. */
const BLEACH_PERCENT = 6;
