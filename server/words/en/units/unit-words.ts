/** What a place along the route is counted in: "km 212", "mile 132". */
export const PLACE_WORDS = { km: 'km', mi: 'mile' } as const;
