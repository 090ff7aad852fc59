/** Units that are words of the language, beside one and beside another figure. */
export const UNIT_WORDS = { days: ['Tag', 'Tage'] } as const;
