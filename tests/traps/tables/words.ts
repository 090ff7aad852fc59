import { fuel, STATION, TAP, type Trap, water } from './trap.ts';

const COUNTS = { evidence: 'stated', counts: true } as const;
const NAME = 'Key:name';
const NOTE = 'Key:note';
const FIXME = 'Key:fixme';
const DESCRIPTION = 'Key:description';
const HOURS = 'Key:opening_hours';

/** What a mapper wrote in a language: that a station is closed, and that a tap gives nothing, or nothing to drink. */
const LANGUAGES: readonly [code: string, closed: string, dry: string][] = [
  ['en', 'Permanently closed since 2019', 'No water when we came by'],
  ['es', 'Cerrado desde hace años', 'Sin agua en verano'],
  ['fr', 'Station fermée', "Pas d'eau"],
  ['pt', 'Posto desativado', 'Água não potável'],
  ['de', 'Dauerhaft geschlossen', 'Kein Trinkwasser'],
  ['it', 'Distributore chiuso', 'Acqua non potabile'],
  ['af', 'Permanent gesluit', 'Geen water'],
  ['ru', 'Закрыта с прошлого года', 'Воды нет'],
  ['kk', 'Жабық', 'Су жоқ'],
  ['ky', 'Жабык', 'Суу жок'],
  ['uz', 'Yopilgan', "Suv yo'q"],
  ['mn', 'Хаагдсан', 'Усгүй худаг'],
  ['tr', 'Kapalı', 'Su yok'],
  ['ar', 'المحطة مغلقة', 'لا يوجد ماء'],
  ['fa', 'تعطیل شده', 'آب ندارد'],
  ['ur', 'مستقل بند', 'پانی نہیں'],
  ['hi', 'स्थायी रूप से बंद', 'पानी नहीं'],
  ['zh', '加油站已关闭', '没有水'],
  ['sw', 'Kituo kimefungwa', 'Hakuna maji'],
  ['am', 'ተዘግቷል', 'ውሃ የለም'],
  ['so', 'Waa la xiray', 'Biyo ma jiraan'],
  ['ha', 'An rufe gidan mai', 'Babu ruwa'],
  ['he', 'סגור לצמיתות', 'אין מים'],
  ['el', 'Μόνιμα κλειστό', 'Χωρίς νερό'],
];

export const WORDS: readonly Trap[] = [
  ...LANGUAGES.flatMap(([code, closed, dry]) => [
    fuel({ ...STATION, note: closed }, 'words-deny', `${NOTE} (${code})`),
    water({ ...TAP, description: dry }, 'words-deny', `${DESCRIPTION} (${code})`),
  ]),
  fuel({ ...STATION, name: 'Old roadhouse (closed)' }, 'words-deny', NAME),
  fuel({ ...STATION, name: 'CLOSED' }, 'words-deny', NAME),
  fuel({ ...STATION, 'name:en': 'Abandoned fuel station' }, 'words-deny', NAME),
  fuel({ ...STATION, operator: 'none - out of business' }, 'words-deny', 'Key:operator'),
  fuel({ ...STATION, fixme: 'closed?' }, 'words-deny', FIXME),
  fuel({ ...STATION, FIXME: 'No fuel in 2024, check' }, 'words-deny', FIXME),
  fuel({ ...STATION, 'note:de': 'außer Betrieb' }, 'words-deny', NOTE),
  fuel({ ...STATION, note: 'Nice people. No diesel. Toilets.' }, 'words-deny', NOTE),
  fuel({ ...STATION, opening_hours: 'Mo-Su 08:00-18:00 "closed until further notice"' }, 'words-deny', HOURS),
  water({ man_made: 'water_well', drinking_water: 'yes', name: 'Well (dry)' }, 'words-deny', NAME),
  water({ man_made: 'water_well', drinking_water: 'yes', name: 'Dry Well' }, 'words-deny', NAME),
  water(
    { man_made: 'water_well', drinking_water: 'yes', name: 'Bore 12 - dry since May' },
    'words-deny',
    NAME,
  ),
  water({ man_made: 'water_well', drinking_water: 'yes', name: 'Pozo seco' }, 'words-deny', NAME),
  water({ ...TAP, note: 'Not drinking water' }, 'words-deny', NOTE),
  water({ ...TAP, inscription: 'Eau non potable' }, 'words-deny', 'Key:inscription'),
  water({ ...TAP, description: 'out of order' }, 'words-deny', DESCRIPTION),
  water({ ...TAP, note: 'tap is broken' }, 'words-deny', NOTE),
  water({ ...TAP, description: 'Usually dry in summer' }, 'words-deny', DESCRIPTION),
  water({ ...TAP, 'drinking_water:note': 'brackish' }, 'words-deny', NOTE),
  // Places that are called so, and what takes it back.
  fuel({ ...STATION, name: 'Dry Creek Roadhouse' }, null, NAME, COUNTS),
  fuel({ ...STATION, name: 'Coldry' }, null, NAME, COUNTS),
  fuel({ ...STATION, name: 'Broken Hill Servo' }, null, NAME, COUNTS),
  fuel({ ...STATION, name: 'Estación Arroyo Seco' }, null, NAME, COUNTS),
  fuel({ ...STATION, operator: 'Dry Lake Council' }, null, 'Key:operator', COUNTS),
  fuel({ ...STATION, note: 'Not closed, was there in May' }, null, NOTE, COUNTS),
  fuel({ ...STATION, note: 'never closed' }, null, NOTE, COUNTS),
  fuel({ ...STATION, note: 'enclosed forecourt' }, null, NOTE, COUNTS),
  fuel({ ...STATION, note: 'Kapalı değil' }, null, NOTE, COUNTS),
  fuel({ ...STATION, note: 'не закрыта' }, null, NOTE, COUNTS),
  fuel({ ...STATION, fixme: 'add the name' }, 'mapper-doubt', FIXME, COUNTS),
  water({ ...TAP, name: 'Quellbrunnen' }, null, NAME, COUNTS),
];
