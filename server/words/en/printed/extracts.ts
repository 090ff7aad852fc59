/** Words of where the map comes from. */
export const EXTRACT_WORDS = {
  mapData: (file: string, date: string, credit: string) => `Map data: ${file}, ${date}. ${credit}.`,
  asOf: (date: string, byUser: boolean) => `as of ${date}${byUser ? ' by your word' : ''}`,
  unknownDate: 'of unknown date',
  newestEdit: (date: string) => `of unknown date, newest edit among its supplies near the route ${date}`,
  uncredited: 'It does not say whose data it is',
};
