import type { PaperWords } from '../../../en/printed/paper/paper.ts';
import { column } from '../../../en/printed/shared/columns.ts';

/** Words of the page for somebody at home. Figures come in as they are set. */
export const HOME_WORDS: PaperWords['home'] = {
  route: (name, length) => `${name}, ${length}.`,
  from: (place) => `Von ${place}`,
  to: (place) => `bis ${place}`,
  vehicle: (name) => `Fahrzeug und Besatzung: ${name}.`,
  leaves: (date) => `Abfahrt am ${date}.`,
  leavesUnknown: 'Der Tag der Abfahrt wurde nicht angegeben: ____________________',
  arrives: (earliest, latest) =>
    earliest === latest
      ? `Am Ende der Route erwartet am ${latest}.`
      : `Am Ende der Route erwartet ab ${earliest}, bei langsamem Tempo am ${latest}.`,
  takes: (days) =>
    `Die Fahrt dauert bei langsamem Tempo etwa ${days} Tage, Aufenthalte und Halte eingeschlossen.`,
  noPlan: 'Es gibt keinen Plan, der die Reserve hält: bitten Sie sie, nicht abzufahren, bevor es einen gibt.',
  unsure: 'Nicht von allem im Plan ist bekannt, dass es reicht.',

  alarm: 'Wann Alarm zu schlagen ist',
  alarmColumns: {
    stop: column('nichts gehört seit'),
    where: column('Koordinaten'),
    by: column('Hilfe rufen bis'),
  },
  by: (by) => by,
  after: (hours) => `${hours} h nach der Abfahrt dort`,
  tooLate: 'das Wasser reicht nicht, bis Hilfe da ist: sofort rufen',
  agreed: (alarm, help) =>
    [
      ...(alarm === null ? [] : [`Sie schlagen ${alarm} h nach der letzten Nachricht Alarm.`]),
      ...(help === null ? [] : [`Hilfe braucht nach der Rechnung ${help} h.`]),
    ].join(' '),
  noHours:
    'Bis zu welcher Stunde Hilfe gerufen werden muss, wurde nicht gerechnet: die Reise sagt nicht, wie lange Hilfe braucht (helpHours). Einen Tag und eine Stunde vereinbaren: ______________________________',
  times: 'Zeiten sind Ortszeiten, gerechnet ab der frühesten möglichen Abfahrt von jeder Stelle.',
  columns: {
    day: column('Tag'),
    date: column('Datum'),
    night: column('Nacht bei'),
    where: column('Stelle, Koordinaten'),
  },
  nights: 'Wo sie sind',
  more: (count) => `Und ${count} ${count === 1 ? 'weiterer Tag' : 'weitere Tage'}.`,

  contacts: 'Wen anrufen',
  blanks: [
    'Besatzung, Telefon: ________________________________',
    'Satellitentelefon oder Peilsender: ________________________________',
    'Polizei oder Rettung unterwegs: ________________________________',
    'Andere, die den Plan kennen: ________________________________',
    'Fahrzeug, Kennzeichen und Farbe: ________________________________',
    'Versicherung, Arzt, Blutgruppen, Krankheiten: ________________________________',
  ],
  stops: 'Halte mit Telefon',
  noStops: 'Für keinen Halt ist ein Telefon verzeichnet.',
  telephone: (place, number) => `${place}: ${number}`,
};
