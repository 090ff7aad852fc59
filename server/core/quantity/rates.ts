/** Rates as people say them, in the units inside. */
const M_PER_KM = 1000;
const M_PER_100_KM = 100_000;

/** Litres a metre. */
export const litresPerM = (litresPer100Km: number): number => litresPer100Km / M_PER_100_KM;

/** Litres for 100 km of so many a metre. */
export const litresPer100Km = (litresPerMetre: number): number => litresPerMetre * M_PER_100_KM;

/** Metres of so many kilometres. */
export const metresOf = (km: number): number => km * M_PER_KM;

/** Kilometres of so many metres, for faults that people read. */
export const kmOf = (metres: number): number => metres / M_PER_KM;
