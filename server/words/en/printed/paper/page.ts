/** A heading for each part of the sheet but the first, which begins with its answer. */
const HEADINGS = {
  trouble: 'Stretches that are not known to hold',
  stops: 'The stops in order',
  gauge: 'Gauge: the least to have aboard',
  days: 'Days, at the slow pace',
  'what-ifs': 'What goes wrong and is not borne',
  check: 'To check before leaving',
  cautions: 'To mind',
  data: 'What this rests on',
  home: 'For somebody at home',
};

/** What stands around the parts of the sheet. */
export const PAGE_WORDS = {
  headings: HEADINGS,
  head: (facts: readonly string[]) => ['Drystage', ...facts].join(' · '),
  leaves: (date: string) => `leaves ${date}`,
  dates: (made: string, data: readonly string[]) =>
    [`made ${made}`, ...(data.length === 0 ? [] : [`map data ${data.join(', ')}`])].join(' · '),
  undated: 'undated',
  ofPages: (page: number, pages: number) => `${page} of ${pages}`,
  foot: 'Planning aid, not a guarantee. Confirm every point. Carry the reserve. Never ration drinking water.',
  lacking: (sign: string) =>
    `${sign} stands for a letter that this file does not have: go by the co-ordinates, or print the page from a browser.`,
  more: (count: number) => `And ${count} more: the command plan and the page name them all.`,
};
