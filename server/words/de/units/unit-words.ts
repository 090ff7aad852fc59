/** Units that are words of the language, beside one and beside another figure. */
export const UNIT_WORDS = { days: ['Tag', 'Tage'] } as const;

/** What a place along the route is counted in: "km 212", "Meile 132". */
export const PLACE_WORDS = { km: 'km', mi: 'Meile' } as const;
