import type { CallFirst } from '../../../contract/whatif.ts';
import { EVIDENCE_WORDS, figure, litres, VERDICT_WORDS } from './figures.ts';
import { plain } from './plain.ts';

export const CHECK_HEAD = 'To check before leaving, that first without which most fails';

/** The list to check before leaving, one line each with a box to tick off. */
export const checkLines = (calls: readonly CallFirst[]): string[] =>
  calls.length === 0
    ? [CHECK_HEAD, '- no supply on the way is used']
    : [CHECK_HEAD, ...calls.map((call) => `- [ ] ${callText(call)}`)];

function callText(call: CallFirst): string {
  const { name, atKm, where, evidence, confirmation } = call;
  const place = name === null ? plain(where) : `${plain(name)} (km ${figure(atKm)})`;
  const again =
    confirmation?.againFrom == null
      ? []
      : [`confirm again before leaving, from ${confirmation.againFrom} on`];
  const facts = [
    confirmation === null ? EVIDENCE_WORDS[evidence] : confirmedText(confirmation),
    ...again,
    ...failTexts(call),
    reachText(call),
    ...seenTexts(call),
  ];
  return `${place}: ${facts.join('; ')}`;
}

function confirmedText({ on, by, words }: NonNullable<CallFirst['confirmation']>): string {
  const who = by === undefined ? '' : ` by ${plain(by)}`;
  return `confirmed on ${on}${who}${words === undefined ? '' : ` ("${plain(words)}")`}`;
}

const failTexts = ({ fails }: CallFirst): string[] =>
  fails.map(({ commodity, verdict, coverL }) => {
    const missing = coverL === 0 ? '' : `, ${litres(coverL)} missing`;
    return `without its ${commodity} ${VERDICT_WORDS[verdict]}${missing}`;
  });

function reachText({ isOwn, phone, website, openingHours }: CallFirst): string {
  const nobody = isOwn ? 'your own: see that it is there' : 'no telephone known';
  return [
    phone === null ? nobody : `telephone ${plain(phone)}`,
    ...(website === null ? [] : [plain(website)]),
    ...(openingHours === null ? [] : [`hours ${plain(openingHours)}`]),
  ].join(', ');
}

const seenTexts = ({ isOwn, seenOn }: CallFirst): string[] =>
  isOwn ? [] : [seenOn === null ? 'last edit not known' : `last edited or checked ${seenOn}`];
