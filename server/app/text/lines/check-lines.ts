import type { CallFirst } from '../../../contract/whatif.ts';
import { PRINTED } from '../../../words/printed.ts';
import { EVIDENCE_WORDS, figure, litres, VERDICT_WORDS } from './figures.ts';
import { plain } from './plain.ts';

const WORDS = PRINTED.check;
const LINES = PRINTED.lines;

/** Without a plan every supply counts as used: no more are listed (ours). */
const MOST_LISTED = 40;

/** The list to check before leaving, one line each with a box to tick off. */
export const checkLines = (calls: readonly CallFirst[]): string[] =>
  calls.length === 0
    ? [WORDS.head, WORDS.none]
    : [
        WORDS.head,
        ...calls.slice(0, MOST_LISTED).map((call) => `- [ ] ${callText(call)}`),
        ...(calls.length > MOST_LISTED ? [WORDS.more(calls.length - MOST_LISTED)] : []),
      ];

/** One supply to check: how well it is known, what fails without it, whom to ask. */
export function callText(call: CallFirst): string {
  const { name, atKm, where, evidence, confirmation } = call;
  const place = name === null ? plain(where) : LINES.place(plain(name), figure(atKm));
  const again = confirmation?.againFrom == null ? [] : [WORDS.again(confirmation.againFrom)];
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
  const plainly = (text: string | undefined) => (text === undefined ? null : plain(text));
  return WORDS.confirmed(on, { by: plainly(by), words: plainly(words) });
}

const failTexts = ({ fails }: CallFirst): string[] =>
  fails.map(({ commodity, verdict, coverL }) => {
    const missing = coverL === 0 ? '' : WORDS.missing(litres(coverL));
    return `${WORDS.without(LINES.commodity(commodity), VERDICT_WORDS[verdict])}${missing}`;
  });

function reachText({ isOwn, phone, website, openingHours }: CallFirst): string {
  const nobody = isOwn ? WORDS.own : LINES.noTelephone;
  return [
    phone === null ? nobody : LINES.telephone(plain(phone)),
    ...(website === null ? [] : [plain(website)]),
    ...(openingHours === null ? [] : [LINES.openHours(plain(openingHours))]),
  ].join(', ');
}

const seenTexts = ({ isOwn, seenOn }: CallFirst): string[] =>
  isOwn ? [] : [seenOn === null ? WORDS.neverSeen : WORDS.seen(seenOn)];
