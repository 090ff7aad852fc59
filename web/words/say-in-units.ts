import type { Analysis } from '../../server/contract/analysis.ts';
import {
  distanceIn,
  formatFigure,
  KG_PER_POUND,
  KM_PER_MILE,
  M_PER_FOOT,
  type UnitSystem,
  volumeIn,
} from '../units/units.ts';

/** Gives a sentence of the server with its quantities in the reader's units. */
export type Say = (text: string) => string;

const NUMBER = String.raw`[-\u2212]?\d+(?:,\d{3})*(?:\.\d+)?`;
const UNIT = String.raw`(?:l\/100 km|km\/h|km|kg|l|m)(?![\w²³])`;
/**
 * What stands in quotes is a name. "km 212", "km 212 to 300"; "31.4 l", "5 to 12 km". No part of an id or of a word, and
 * no "12 km Camp": a capital after a unit is a name's.
 */
const QUANTITY = String.raw`"[^"]*"|\bkm\s(${NUMBER})(?: to (${NUMBER})(?![.,]?\d|\s${UNIT}))?|(?<![\w./-])(?:(${NUMBER})( to ))?(${NUMBER})\s(${UNIT})(?! [A-Z])`;

interface UnitWords {
  unit: string;
  /** At least so many decimals: a gallon is too coarse without. */
  decimals: number;
  from: (metric: number) => number;
}

function unitWords(unit: string, units: UnitSystem): UnitWords {
  switch (unit) {
    case 'l':
      return { unit: 'gal', decimals: 1, from: (litres) => volumeIn(litres, units) };
    case 'kg':
      return { unit: 'lb', decimals: 0, from: (kg) => kg / KG_PER_POUND };
    case 'm':
      return { unit: 'ft', decimals: 0, from: (metres) => metres / M_PER_FOOT };
    case 'l/100 km':
      return { unit: 'mi/gal', decimals: 1, from: (rate) => 100 / KM_PER_MILE / volumeIn(rate, units) };
    default:
      return {
        unit: unit === 'km' ? 'mi' : 'mph',
        decimals: 0,
        from: (km) => distanceIn(km, units),
      };
  }
}

/** As exact as it was told, and never nothing where there is something. */
function converted(told: string, { decimals, from }: UnitWords): string {
  const plain = told.replaceAll(',', '').replace('\u2212', '-');
  const value = from(Number(plain));
  const own = plain.split('.')[1]?.length ?? 0;
  const least = Math.abs(value) < 1 ? 2 : Math.abs(value) < 10 ? 1 : 0;
  return formatFigure(value, Math.max(own, decimals, least));
}

/**
 * Rewrites the quantities in sentences of the server: kilometres, litres, kilograms and metres, consumption and speed.
 * Of degrees only differences change. `names` may hold figures of their own and are left alone. Metric text stays as it came.
 */
export function sayIn(units: UnitSystem, names: readonly string[] = []): Say {
  if (units === 'metric') return (text) => text;
  const kept = [...new Set(names)]
    .filter((name) => new RegExp(QUANTITY).test(name))
    .sort((a, b) => b.length - a.length)
    .map((name) => `${name.replaceAll(/[\\^$.*+?()[\]{}|]/g, String.raw`\$&`)}|`);
  const pattern = new RegExp(kept.join('') + QUANTITY, 'g');
  const place = unitWords('km', units);
  return (text) =>
    hotterIn(units, text).replace(pattern, (whole: string, ...groups: unknown[]) => {
      const [atKm, toKm, least, to, told, unit] = groups.map((group) =>
        typeof group === 'string' ? group : undefined,
      );
      if (atKm !== undefined) {
        return `mile\u00a0${converted(atKm, place)}${toKm === undefined ? '' : ` to ${converted(toKm, place)}`}`;
      }
      if (told === undefined || unit === undefined) return whole;
      const words = unitWords(unit, units);
      const before = least === undefined ? '' : `${converted(least, words)}${to}`;
      return `${before}${converted(told, words)}\u00a0${words.unit}`;
    });
}

/** Degrees by which it is hotter: a difference, where degrees of a thermometer stay. */
const HOTTER = /(\d+(?:\.\d+)?)\s°C(?= hotter)/g;

const hotterIn = (units: UnitSystem, text: string): string =>
  units === 'us'
    ? text.replace(HOTTER, (_told, celsius: string) => `${formatFigure(Number(celsius) * 1.8, 1)}\u00a0°F`)
    : text;

/** The names that sentences about an analysis may hold. */
export const namesIn = ({ route, passings, fuel, water }: Analysis): string[] =>
  [
    route.name,
    ...passings.map(({ name }) => name),
    ...[fuel, water].flatMap(({ gaps }) =>
      gaps.flatMap(({ from, to, rescue }) => [from, to, ...rescue].map(({ name }) => name)),
    ),
  ].filter((name) => name !== null);
