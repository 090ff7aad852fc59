import type { PaperWords } from '../../../en/printed/paper/paper.ts';

/** Words in the small map and the strip. Figures come in as they are set. */
export const PICTURE_WORDS: PaperWords['pictures'] = {
  map: (route) => `Kleine Karte von ${route}, Norden oben, mit den Nummern der Halte`,
  strip:
    'Was auf der Route an Bord ist, von unten nach oben: Kraftstoff links der Linie, Wasser rechts davon',
  north: 'N',
  start: 'Start',
  end: 'Ende',
  both: 'Start, Ende',
  fuel: 'Kraftstoff',
  water: 'Wasser',
  back: (place) => `zurück vor ${place}`,
  dry: (place) => `leer bei ${place}`,
  reserve: (place) => `Reserve ${place}`,
  legend: {
    tanks: 'in den Tanks',
    cans: 'in Kanistern',
    reserve: 'Reserve',
    dry: 'nichts übrig',
    unknown: 'ohne Karte',
    short: 'geht aus',
    'into-reserve': 'an die Reserve',
    'not-known': 'nicht bekannt',
  },
};
