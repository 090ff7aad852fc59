/** The languages in which everything can be said, English first: what is asked in another one is answered in it. */
export const LANGUAGES = ['en', 'de'] as const;
export type Language = (typeof LANGUAGES)[number];

let heard: () => Language = () => 'en';

/** The language that is spoken just now: of a request on the server, of the page in a browser. */
export const language = (): Language => heard();

/** Says once, where a program starts, how it knows which language is asked for; English where nobody does. */
export function hearLanguage(from: () => Language): void {
  heard = from;
}
