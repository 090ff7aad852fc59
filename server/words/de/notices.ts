/** Notices of lands that are invented, by their English as it is kept with a trip. */
export const NOTICES: Readonly<Record<string, string>> = {
  'Orrimar is invented. Do not drive by it.': 'Orrimar ist erfunden. Nicht danach fahren.',
};
