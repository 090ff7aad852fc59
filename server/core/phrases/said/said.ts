/**
 * What core says, before it is put in words: a stable code and the facts of the case, in metres, litres, kilograms,
 * days, seconds and degrees Celsius. How it reads, and in whose units, is for server/words.
 *
 * `Facts` lists for each code what has to be known to say it.
 */
export type Said<Facts> = {
  readonly [Code in keyof Facts]: { readonly code: Code; readonly facts: Facts[Code] };
}[keyof Facts];

/** A phrase inside another thing: the label of a term, the why of a default. It has no code in answers, only words. */
export type Phrased<Facts> = {
  readonly [Name in keyof Facts]: { readonly phrase: Name; readonly facts: Facts[Name] };
}[keyof Facts];

/** For what needs no facts. */
export type NoFacts = Readonly<Record<never, never>>;
