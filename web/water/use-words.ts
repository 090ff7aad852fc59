import type { WaterUse, WaterUseName } from '../../server/contract/crew.ts';

export const USE_WORDS: Record<WaterUseName, string> = {
  drinking: 'drinking',
  cooking: 'cooking',
  'washing-up': 'washing up',
  'teeth-and-hands': 'teeth, hands, wounds',
  pets: 'pets',
  washing: 'washing',
  shower: 'shower',
  vehicle: 'vehicle',
  losses: 'spilled and leaked',
  'osmosis-waste': 'thrown away by reverse osmosis',
};

/** Where the litres a day come from. */
export const FROM_WORDS: Record<WaterUse['from'], string> = {
  rate: 'your own figure for all aboard',
  crew: 'summed from the crew',
  observed: 'your observed figure, split as the crew uses it',
};

export const SUN_WORDS = { shade: 'in the shade', some: 'some sun', full: 'full sun' } as const;
