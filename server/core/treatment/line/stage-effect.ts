import { GERM_CLASSES, type GermClass, type Logs, type StageKind } from '../../../contract/treatment.ts';
import { boilingPointC, boilMinutes, HIGH_ABOVE_M, STRICTER_ABOVE_M } from './boiling.ts';
import { CHLORINE, type ChlorineWater, doseNeeded, dropsPerLitre } from './chlorine.ts';
import { logOfPercent, NO_LOGS, roundedLog } from './logs.ts';
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
  why: string[];
  /** Why the stage counts for nothing; null where it counts. */
  nothing: string | null;
  leavesNtu: number;
  desalts: boolean;
  /** Why no water goes through; null when it does. */
  clogs: string | null;
  /** Conditions that nobody told and that were taken as met. */
  unmeasured: string[];
}

interface Credit {
  log: number;
  why: string;
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
  uv: { bacteria: 3, viruses: 3, protozoa: 3 },
  chlorine: { bacteria: 3, viruses: 3, protozoa: 0 },
  boiling: { bacteria: 6, viruses: 6, protozoa: 6 },
};

/** NSF/ANSI 55: class A at least 40 mJ/cm2 for clear contaminated water; class B (16) only for water fit to drink. */
const UV_DOSE = 40;
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
    clogs: null,
    unmeasured: [],
  };
  const nothing = (why: string): StageEffect => ({
    ...effect,
    why: [`counts for nothing: ${why}`],
    nothing: why,
  });
  if (stage.mayHaveFrozen) return nothing('it may have frozen');
  if (stage.lifeLitres !== undefined && (stage.usedLitres ?? 0) >= stage.lifeLitres) {
    return nothing(`its ${stage.lifeLitres} l were used up before the trip`);
  }
  const refused = CONDITIONS[stage.kind]?.(stage, water, effect) ?? null;
  if (refused !== null) return nothing(refused);
  if (isFilter(stage)) {
    if (stage.standsNtu !== undefined && water.turbidityNtu > stage.standsNtu) {
      const clogs = `water of ${water.turbidityNtu} NTU clogs it, it stands ${stage.standsNtu} NTU`;
      return { ...nothing(clogs), clogs: `${stage.name}: ${clogs}` };
    }
    if (stage.standsNtu === undefined && water.turbidityNtu > CHLORINE.belowNtu) {
      effect.unmeasured.push(`${stage.name}: what cloudiness it stands was not told`);
    }
    effect.leavesNtu = Math.min(water.turbidityNtu, leftNtu(stage));
    effect.desalts = stage.kind === 'reverse-osmosis';
  }
  const credits = GERM_CLASSES.map((germs) => [germs, creditOf(stage, germs)] as const);
  effect.logs = Object.fromEntries(credits.map(([germs, credit]) => [germs, credit.log])) as Logs;
  effect.why.push(...credits.map(([germs, { log, why }]) => `${germs} ${roundedLog(log)}: ${why}`));
  return effect;
}

const isFilter = (stage: Stage): boolean => KIND_LOGS[stage.kind] === undefined;

function leftNtu(stage: Stage): number {
  if (stage.leavesNtu !== undefined) return stage.leavesNtu;
  return stage.poreMicron !== undefined && stage.poreMicron <= CLEARS.poreMicron ? CLEARS.ntu : Infinity;
}

function creditOf(stage: Stage, germs: GermClass): Credit {
  const log = stage.logs?.[germs];
  if (log !== undefined) return { log, why: 'as stated' };
  const percent = stage.stopsPercent?.[germs];
  if (percent !== undefined) return { log: logOfPercent(percent), why: `stops ${percent} % as stated` };
  const byKind = KIND_LOGS[stage.kind];
  if (byKind !== undefined) return { log: byKind[germs], why: `usual for ${stage.kind} (WHO, from memory)` };
  return byPore(stage.poreMicron, germs);
}

function byPore(poreMicron: number | undefined, germs: GermClass): Credit {
  if (germs === 'viruses')
    return { log: 0, why: 'no filter is taken to stop them unless its maker says so (CDC)' };
  if (poreMicron === undefined) return { log: 0, why: 'neither log reduction nor pore size was told' };
  const pores = `${poreMicron} µm pores`;
  if (poreMicron > PORE[germs]) return { log: 0, why: `${pores}, needs ${PORE[germs]} µm or less (CDC)` };
  if (germs === 'protozoa')
    return { log: PORE_LOGS.protozoa, why: `${pores}, ${PORE.protozoa} µm or less (CDC)` };
  return poreMicron < ULTRA_BELOW_MICRON
    ? { log: PORE_LOGS.bacteriaUltra, why: `${pores}, an ultrafilter (WHO, from memory)` }
    : { log: PORE_LOGS.bacteria, why: `${pores}, ${PORE.bacteria} µm or less (CDC)` };
}

/** Why a stage counts for nothing in a water, null when its conditions are met; remarks go into the effect. */
type Condition = (stage: Stage, water: Conditions, effect: StageEffect) => string | null;

const CONDITIONS: Partial<Record<StageKind, Condition>> = {
  uv(stage, water, effect) {
    const dose = stage.doseMJPerCm2;
    if (dose === undefined) return 'its dose was not told';
    if (dose < UV_DOSE)
      return `${dose} mJ/cm2 serve only water already fit to drink, ${UV_DOSE} are needed (NSF/ANSI 55)`;
    const clearNtu = stage.standsNtu ?? UV_CLEAR_NTU;
    if (water.turbidityNtu > clearNtu) {
      return `water of ${water.turbidityNtu} NTU shades the light, ${clearNtu} NTU at most: filter it first`;
    }
    const { flowLPerMin: ratedLPerMin } = stage;
    if (ratedLPerMin === undefined) return null;
    if (water.flowLPerMin === null) {
      effect.unmeasured.push(`${stage.name}: water taken as no faster than ${ratedLPerMin} l/min`);
    } else if (water.flowLPerMin > ratedLPerMin) {
      return `water runs at ${roundedLog(water.flowLPerMin)} l/min, its dose is for ${ratedLPerMin}: throttle the tap`;
    }
    return null;
  },

  chlorine(stage, water, effect) {
    if (water.ph !== null && water.ph >= CHLORINE.belowPh)
      return `pH ${water.ph}, must be below ${CHLORINE.belowPh} (WHO)`;
    const dose = doseNeeded(water, stage.standsNtu ?? null);
    if (dose === null) return `water of ${water.turbidityNtu} NTU is too cloudy: clear it first (WHO)`;
    const { mgPerLitre, minutes } = stage;
    if (mgPerLitre === undefined) return 'its dose was not told';
    if (mgPerLitre < dose) return `${mgPerLitre} mg/l, this water needs ${dose} (Lantagne 2008, EPA)`;
    if (minutes === undefined) return 'its time was not told';
    if (minutes < CHLORINE.minutes)
      return `${minutes} minutes, at least ${CHLORINE.minutes} are needed (WHO)`;
    const drops = roundedLog(dropsPerLitre(mgPerLitre, BLEACH_PERCENT));
    effect.why.push(
      `${mgPerLitre} mg/l are ${drops} drops of ${BLEACH_PERCENT} % bleach a litre (20 drops a ml)`,
    );
    if (water.turbidityNtu >= CHLORINE.idealNtu)
      effect.why.push(`better below ${CHLORINE.idealNtu} NTU (WHO)`);
    if (water.ph === null) effect.unmeasured.push(`${stage.name}: pH taken as below ${CHLORINE.belowPh}`);
    if (water.temperatureC === null) effect.unmeasured.push(`${stage.name}: water taken as not very cold`);
    return null;
  },

  boiling(stage, water, effect) {
    const needed = boilMinutes(water.altitudeM);
    const place =
      water.altitudeM === null
        ? 'where the height is not known'
        : `at ${Math.round(water.altitudeM)} m, where water boils at ${roundedLog(boilingPointC(water.altitudeM))} °C`;
    if (stage.minutes === undefined) return 'its time was not told';
    if (stage.minutes < needed)
      return `${stage.minutes} min of rolling boil, ${needed} are needed ${place} (CDC)`;
    effect.why.push(`${stage.minutes} min of rolling boil, ${needed} needed ${place} (CDC)`);
    if (water.altitudeM !== null && water.altitudeM > STRICTER_ABOVE_M && water.altitudeM <= HIGH_ABOVE_M) {
      effect.why.push('EPA prints 5,000 feet and 1,000 m for one height from which it asks for 3 min');
    }
    return null;
  },
};

/** Household bleach of the EPA leaflet, percent. */
const BLEACH_PERCENT = 6;
