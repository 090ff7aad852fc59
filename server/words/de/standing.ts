import type { Catalogue } from '../parts/catalogue.ts';
import { parts } from '../parts/part.ts';

/** The cautions that every answer carries. */
export const STANDING_REASONS = {
  'planning-aid': () => parts`Eine Planungshilfe, keine Garantie.`,
  'confirm-points': () =>
    parts`Kartendaten können falsch, alt oder lückenhaft sein: jede Stelle, auf die es ankommt, vor der Abfahrt nachprüfen.`,
  'carry-reserve': () => parts`Die Reserve mitführen.`,
  drink: () =>
    parts`Hitze, Krankheit und Pannen vervielfachen den Wasserbedarf. Trinkwasser niemals rationieren.`,
  'treat-water': () =>
    parts`Zweifelhaftes Wasser aufbereiten. Filter und Chlor entfernen weder Salz noch Chemikalien.`,
  'fuel-cans': () =>
    parts`Kraftstoffkanister: nur zugelassene, nicht in der Kabine, belüftet, innerhalb der örtlichen Grenzen.`,
  masses: () => parts`Auf die zulässige Masse und die Achslasten des Fahrzeugs achten.`,
  'tell-somebody': () => parts`Den Plan bei jemandem hinterlassen.`,
  'local-law': () => parts`Örtliches Recht und die Fachleute gehen vor.`,
} satisfies Partial<Catalogue['reasons']>;
