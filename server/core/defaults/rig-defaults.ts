import type { Sun, UseLevel, Work } from '../../contract/crew.ts';
import type { NamedTarget } from '../../contract/treatment.ts';
import type { KerbIncludes } from '../../contract/vehicle.ts';

/*
 * What is taken where a rig does not tell it, with where it comes from: each figure stands here alone. Tables by kind
 * (surfaces, fuels, sources of water, levels of use) stand with what they are tables of.
 */

/** As a file would have it. */
export const RIG_NAME = 'unnamed rig';

/** High end of a fuel rate given as one number, and the inverse of its low end (ours). */
export const FUEL_HIGH = 1.25;
/** The same of water, of the whole rig and of one use (ours). */
export const WATER_HIGH = 1.5;
/** Slow end of a pace given as one number, and the inverse of its fast end (ours). */
export const PACE_SLOW = 0.7;

/** The usual size of a portable can, litres (common practice, no source). */
export const CAN_LITRES = 20;
/** How full a container is filled, percent, and what of it cannot be used, litres (ours). */
export const FILL_PERCENT = 100;
export const UNUSABLE_LITRES = 0;
/** Reserves (ours: no agency publishes one for land vehicles). */
export const FUEL_RESERVE = { km: 100, shareOfNeed: 0.1 };
export const WATER_RESERVE = { days: 2 };

/** Of a person (ours). */
export const USE_LEVEL: UseLevel = 'careful';
/** Where heat is told without them (ours; the table is said to sustain at least four hours of work). */
export const SUN: Sun = 'full';
export const WORK: Work = 'moderate';
/** A light air, as of walking about: 1 m/s (ours). */
export const WIND_KM_PER_HOUR = 3.6;
export const WORK_HOURS = 4;
/** Water for the vehicle, litres a day, and losses, percent of what is drawn (ours). */
export const VEHICLE_LITRES_PER_DAY = 0;
export const LOSS_PERCENT = 0;

/** Share of a descent's energy that spares fuel (ours: the rest goes into brakes and an engine that turns anyway). */
export const GIVE_BACK = 0.3;
/** Rises and falls up to this are taken for noise of the measuring, metres (ours). */
export const THRESHOLD_M = 10;
/** Air conditioning on top of idling, and a fuel-burning heater on a middle setting, litres per hour (ours). */
export const COOLING_L_PER_HOUR = 0.6;
export const HEATER_L_PER_HOUR = 0.25;
/** Drag coefficient times frontal area of a tall off-road vehicle with things on its roof, m² (ours). */
export const DRAG_AREA_M2 = 1.3;

/** What the kerb mass includes: of the two usual readings the one that comes out heavier (ours). */
export const KERB_INCLUDES = 'full-fuel-no-driver' satisfies KerbIncludes;
/** EU type approval reckons a driver of 75 kg (from memory). */
export const DRIVER_KG = 75;
/** As a file would name who drives where nobody is told. */
export const DRIVER_NAME = 'driver';
/** Of the kerb mass, from the middle: even on left and right (ours). */
export const CG_SIDE_M = 0;

/** What a treatment line must take out: all three classes in the worst water (ours to ask for it by default). */
export const TARGET: NamedTarget = 'purifier';
/** The most bacteria that the strictest target asks for; tests seldom show more (ours). */
export const MAXIMUM_LOG = 6;
/** Where a line works: raw water in the tank is the worse case (ours). */
export const TREAT_AT = 'tap';
/** Whether water stated fit to drink is treated as well (ours). */
export const TREAT_EVERYTHING = false;
/** Share that a small reverse osmosis makes clean (from memory). */
export const RECOVERY = 0.25;
