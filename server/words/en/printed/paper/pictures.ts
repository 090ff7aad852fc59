/** Words in the small map and the strip. Figures come in as they are set. */
export const PICTURE_WORDS = {
  map: (route: string) => `Small map of ${route}, north up, with the numbers of the stops`,
  strip: 'What is aboard along the route from its foot upwards: fuel left of the line, water right of it',
  north: 'N',
  start: 'start',
  end: 'end',
  both: 'start, end',
  fuel: 'fuel',
  water: 'water',
  back: (km: string) => `back before ${km}`,
  dry: (km: string) => `runs dry ${km}`,
  reserve: (km: string) => `reserve ${km}`,
  legend: {
    tanks: 'in the tanks',
    cans: 'in cans',
    reserve: 'reserve',
    dry: 'nothing left',
    unknown: 'no map data',
    short: 'runs dry',
    'into-reserve': 'into the reserve',
    'not-known': 'not known to hold',
  },
};
