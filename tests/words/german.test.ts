import { aroundEach, describe, expect, it } from 'vitest';
import { DEMO_NOTICE } from '../../server/io/demo-files.ts';
import { GERMAN } from '../../server/words/de/german.ts';
import { ENGLISH } from '../../server/words/en/english.ts';
import { noticeWords } from '../../server/words/notice.ts';
import { misfitWords, routeRefusalWords, textOf, type Utterance } from '../../server/words/words-of.ts';
import { speaking } from '../../server/work/speaking.ts';

const TABLES = ['cautions', 'reasons', 'phrases', 'misfits', 'routeRefusals', 'logFaults'] as const;

aroundEach((run) => speaking('de', run));

it('says nothing in English: no table borrows a code of the other language', () => {
  for (const table of TABLES) {
    const [german, english]: Record<string, unknown>[] = [GERMAN[table], ENGLISH[table]];
    expect(Object.keys(german!).sort(), table).toEqual(Object.keys(english!).sort());
    expect(
      Object.keys(english!).filter((code) => german![code] === english![code]),
      table,
    ).toEqual([]);
  }
});

/** What protects life, to the letter. */
it.each<[string, Utterance]>([
  [
    'Hitze, Krankheit und Pannen vervielfachen den Wasserbedarf. Trinkwasser niemals rationieren.',
    { code: 'drink', facts: {} },
  ],
  [
    '/crew/people/0: weniger als 2,5 l zu trinken am Tag, das Mindeste zum Überleben bei mildem Wetter (Sphere Handbook). Trinkwasser niemals rationieren.',
    { code: 'drinking-below-survival', facts: { path: '/crew/people/0', leastL: 2.5 } },
  ],
  [
    'Ein Mensch kann 13,5 l am Tag zu trinken brauchen; ein Körper nimmt höchstens 11,4 l auf. In dieser Hitze nicht mehr arbeiten, oder nachts fahren: mehr als 12 l werden dafür nicht mitgeführt.',
    { code: 'intake-day-limit', facts: { litres: 13.5, mostL: 11.36 } },
  ],
  [
    'Bei 43 °C im Schatten leben Menschen ohne Wasser voraussichtlich etwa 3 Tage in Ruhe, 2,5 Tage, wenn sie nachts gehen (Adolph, 1947: ruhende Männer; aus dem Gedächtnis). Beim Fahrzeug bleiben, im Schatten.',
    { code: 'survival-days', facts: { temperatureC: 43, restingDays: 3, walkingDays: 2.5 } },
  ],
  [
    'Ein Leck, eine Pumpe oder ein Hahn kann den Tank „unten“ leeren: dann bleiben, auch wenn alles voll war, 20 l Trinkwasser, weniger als die Reserve von 36,5 l. Die Reserve getrennt aufbewahren, in Kanistern oder einem eigenen Tank.',
    {
      code: 'reserve-in-one-place',
      facts: { loss: { phrase: 'tank-lost', facts: { names: ['unten'] } }, safeL: 20, reserveL: 36.5 },
    },
  ],
  [
    'Kraftstoff in der Kabine: 2 Kraftstoffkanister zu 20 l. Sein Dampf kann brennen und vergiften: Kraftstoff draußen und belüftet mitführen.',
    {
      code: 'fuel-in-cabin',
      facts: { name: { phrase: 'owned-cans', facts: { commodity: 'fuel', owned: 2, litres: 20 } } },
    },
  ],
  [
    'Gesperrt ab 2027-03-01 (von Ihnen vermerkt am 2027-02-20): die Route kann hier nicht gefahren werden, wie sie ist. Einen anderen Weg suchen, oder eine andere Zeit.',
    { code: 'route-closed', facts: { on: '2027-02-20', from: '2027-03-01' } },
  ],
  [
    'Aufbereitet wird am Hahn: Tank und Leitungen davor enthalten Rohwasser und bleiben von dieser Klasse, bis sie gereinigt und desinfiziert sind (WHO/WEDC Technical Note 3).',
    { code: 'treatment-at-tap', facts: {} },
  ],
  [
    'Nächte von -2,5 °C können Membranen zerreißen, ohne dass man es sieht: die Anlage entleeren oder warm halten, und sie nicht mehr zählen, wenn sie einmal gefroren ist.',
    { code: 'treatment-may-freeze', facts: { nightC: -2.5 } },
  ],
])('protects in German: %s', (text, said) => expect(textOf(said)).toBe(text));

describe('numbers, plurals and cases', () => {
  it.each<[string, Utterance]>([
    [
      'Mit 5 Kraftstoffkanistern und 1 Wasserkanister mehr geht es: 104 kg mehr, wenn sie voll sind.',
      {
        phrase: 'with-more-cans',
        facts: {
          cans: [
            { commodity: 'fuel', count: 5 },
            { commodity: 'water', count: 1 },
          ],
          moreKg: 104.2,
        },
      },
    ],
    [
      '1 Kraftstoffkanister ist vor dem Start zu füllen.',
      { code: 'plan-cans-at-start', facts: { commodity: 'fuel', cans: 1 } },
    ],
    [
      '3 Wasserkanister mehr sind zu besorgen: vorhanden sind 2.',
      { code: 'plan-cans-to-get', facts: { commodity: 'water', cans: 3, owned: 2 } },
    ],
    [
      '1 Schritt zwischen Punkten ist länger als 1 km, der längste 2,5 km: dort ist die Linie vielleicht nicht die Straße: sie zählt × 1,3, und ein Abschnitt, der zu mehr als einem Fünftel aus solchen Schritten besteht oder in dem einer an einem Ende scharf abbiegt, ist bestenfalls nicht bekannt. Ist die Straße dort gerade, das in der Reise angeben (routeIsRoad: true)',
      { code: 'sparse-steps', facts: { steps: 1, longestM: 2500, overM: 1000 } },
    ],
    [
      '0,5 mJ/cm² genügen nur für Wasser, das schon trinkbar ist, 16 sind nötig (NSF/ANSI 55)',
      {
        phrase: 'dose-too-weak',
        facts: { mJPerCm2: 0.5, neededMJPerCm2: 16 },
      },
    ],
    ['1 Tag', { phrase: 'days', facts: { days: 1 } }],
    ['0,5 Tage', { phrase: 'days', facts: { days: 0.5 } }],
    ['1,3 × die gerade Linie', { phrase: 'straight-line-times', facts: { factor: 1.3 } }],
  ])('%s', (text, said) => expect(textOf(said)).toBe(text));

  it('refuses with decimal commas, keys as they stand in the file', () => {
    expect(
      misfitWords({
        path: '/pace/kmPerHour',
        misfit: 'pace-order',
        facts: { slow: 45.5, typical: 40, fast: 60 },
      }),
    ).toEqual({
      came: 'slow 45,5, typical 40, fast 60',
      expected: 'slow <= typical <= fast',
      remedy: 'Die drei Zahlen von /pace/kmPerHour in die Reihenfolge bringen',
    });
    expect(routeRefusalWords({ code: 'gpx-one-point', facts: { points: 1 } }).came).toBe(
      'ein einziger Punkt',
    );
  });
});

it('says that the demo land is invented', () => {
  expect(noticeWords(DEMO_NOTICE)).toBe('Orrimar ist erfunden. Nicht danach fahren.');
  expect(noticeWords('Somebody else’s words.')).toBe('Somebody else’s words.');
  expect(speaking('en', () => noticeWords(DEMO_NOTICE))).toBe(DEMO_NOTICE);
});
