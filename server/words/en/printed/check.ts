/** Words of the list to check before leaving. Figures come in as they are set. */
export const CHECK_WORDS = {
  head: 'To check before leaving, that first without which most fails',
  none: '- no supply on the way is used',
  again: (from: string) => `confirm again before leaving, from ${from} on`,
  confirmed: (on: string, { by, words }: { by: string | null; words: string | null }) =>
    `confirmed on ${on}${by === null ? '' : ` by ${by}`}${words === null ? '' : ` ("${words}")`}`,
  without: (commodity: string, verdict: string) => `without its ${commodity} ${verdict}`,
  missing: (litres: string) => `, ${litres} missing`,
  more: (count: number) => `- and ${count} more (--json names them all)`,
  own: 'your own: see that it is there',
  neverSeen: 'last edit not known',
  seen: (on: string) => `last edited or checked ${on}`,
};
