import type { PaperWords } from '../../../en/printed/paper/paper.ts';

/** What stands around the parts of the sheet. */
export const PAGE_WORDS: PaperWords['page'] = {
  headings: {
    trouble: 'Abschnitte, von denen nicht bekannt ist, dass sie reichen',
    stops: 'Die Halte der Reihe nach',
    gauge: 'Tankanzeige: was mindestens an Bord sein muss',
    days: 'Tage, bei langsamem Tempo',
    'what-ifs': 'Was schiefgehen kann und nicht verkraftet wird',
    check: 'Vor der Abfahrt nachzuprüfen',
    cautions: 'Zu beachten',
    data: 'Worauf das beruht',
    home: 'Für jemanden zu Hause',
  },
  head: (facts) => ['Drystage', ...facts].join(' · '),
  leaves: (date) => `Abfahrt ${date}`,
  dates: (made, data) =>
    [`erstellt ${made}`, ...(data.length === 0 ? [] : [`Kartendaten ${data.join(', ')}`])].join(' · '),
  undated: 'ohne Datum',
  ofPages: (page, pages) => `${page} von ${pages}`,
  foot: 'Planungshilfe, keine Garantie. Jede Stelle nachprüfen. Die Reserve mitführen. Trinkwasser niemals rationieren.',
  lacking: (sign) =>
    `${sign} steht für ein Zeichen, das diese Datei nicht hat: nach den Koordinaten gehen, oder die Seite aus einem Browser drucken.`,
  more: (count) => `Und ${count} weitere: der Befehl plan und die Seite nennen alle.`,
};
