/** Plain words for the paths of rig and trip, for assumptions and refusals. */
const WORDS: Record<string, string> = {
  '/name': 'Name',
  '/fuel/kind': 'Fuel',
  '/fuel/litresPer100Km': 'Fuel use',
  '/fuel/litresPer100Km/high': 'Fuel use at worst',
  '/fuel/tanks': 'Fuel tanks',
  '/fuel/cans': 'Fuel cans',
  '/fuel/reserve': 'Fuel reserve',
  '/water/litresPerDay': 'Water use',
  '/water/litresPerDay/high': 'Water use at worst',
  '/water/tanks': 'Water tanks',
  '/water/cans': 'Water cans',
  '/water/reserve': 'Water reserve',
  '/pace/hoursPerDay': 'Hours of driving a day',
  '/pace/kmPerHour': 'Pace',
  '/pace/kmPerHour/slow': 'Pace at the slow end',
  '/equipment/ropeAndBucket': 'Rope and bucket',
  '/aboard': 'Aboard at the start',
  '/onward': 'Onward from the end',
  '/corridorKm': 'Corridor either side',
  '/counting/fuel': 'Fuel counts from',
  '/counting/water': 'Water counts from',
  '/allowancePercent': 'Allowance for winding',
  '/detourFactor': 'Detour factor',
  '/part': 'Part of the file',
  '/departure': 'Departure',
  '/sparseStepKm': 'Straight step taken for a sketch',
  '/campDays': 'Days at each camp',
};

/** The words for a path; the path itself where there are none, so that nothing is hidden. */
export const fieldWords = (path: string): string => WORDS[path] ?? path;

/** "/fuel/tanks/0/litres" as "fuel, tanks 1, litres": for places that have no words of their own. */
function pathWords(path: string): string {
  const known = WORDS[path];
  if (known !== undefined) return known;
  const words = path
    .split('/')
    .slice(1)
    .map((key) =>
      /^\d+$/.test(key) ? String(Number(key) + 1) : key.replace(/[A-Z0-9]+/g, ' $&').toLowerCase(),
    );
  return words.join(', ').replace(/, (\d+)/g, ' $1');
}

/** A refusal's text with the paths of rig and trip in words, as people know them from the form. */
export const withoutPaths = (text: string): string =>
  text.replace(/(?<![\w.:/])\/[a-zA-Z][\w]*(\/\w+)*/g, (path) => pathWords(path));
