import type { CallFirst } from '../../../contract/whatif.ts';
import { printed } from '../../../words/printed.ts';
import { litres, place as placeAt } from './figures.ts';
import { plain } from './plain.ts';

const words = () => printed().check;
const lineWords = () => printed().lines;

/** Without a plan every supply counts as used: no more are listed (ours). */
const MOST_LISTED = 40;

/** The list to check before leaving, one line each with a box to tick off. */
export const checkLines = (calls: readonly CallFirst[]): string[] =>
  calls.length === 0
    ? [words().head, words().none]
    : [
        words().head,
        ...calls.slice(0, MOST_LISTED).map((call) => `- [ ] ${callText(call)}`),
        ...(calls.length > MOST_LISTED ? [words().more(calls.length - MOST_LISTED)] : []),
      ];

/** One supply to check: how well it is known, what fails without it, whom to ask. */
export function callText(call: CallFirst): string {
  const { name, atKm, where, evidence, confirmation } = call;
  const place = name === null ? plain(where) : lineWords().place(plain(name), placeAt(atKm));
  const again = confirmation?.againFrom == null ? [] : [words().again(confirmation.againFrom)];
  const facts = [
    confirmation === null ? lineWords().evidence[evidence] : confirmedText(confirmation),
    ...again,
    ...failTexts(call),
    reachText(call),
    ...seenTexts(call),
  ];
  return `${place}: ${facts.join('; ')}`;
}

function confirmedText({ on, by, words: said }: NonNullable<CallFirst['confirmation']>): string {
  const plainly = (text: string | undefined) => (text === undefined ? null : plain(text));
  return words().confirmed(on, { by: plainly(by), words: plainly(said) });
}

const failTexts = ({ fails }: CallFirst): string[] =>
  fails.map(({ commodity, verdict, coverL }) => {
    const missing = coverL === 0 ? '' : words().missing(litres(coverL));
    return `${words().without(lineWords().commodity(commodity), lineWords().verdicts[verdict])}${missing}`;
  });

function reachText({ isOwn, phone, website, openingHours }: CallFirst): string {
  const nobody = isOwn ? words().own : lineWords().noTelephone;
  return [
    phone === null ? nobody : lineWords().telephone(plain(phone)),
    ...(website === null ? [] : [plain(website)]),
    ...(openingHours === null ? [] : [lineWords().openHours(plain(openingHours))]),
  ].join(', ');
}

const seenTexts = ({ isOwn, seenOn }: CallFirst): string[] =>
  isOwn ? [] : [seenOn === null ? words().neverSeen : words().seen(seenOn)];
