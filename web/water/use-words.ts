import type { WaterUse, WaterUseName } from '../../server/contract/crew.ts';
import { t } from '../language/t.ts';

export const USE_WORDS: Record<WaterUseName, string> = {
  drinking: t('drinking'),
  cooking: t('cooking'),
  'washing-up': t('washing up'),
  'teeth-and-hands': t('teeth, hands, wounds'),
  pets: t('pets'),
  washing: t('washing'),
  shower: t('shower'),
  vehicle: t('vehicle'),
  losses: t('spilled and leaked'),
  'osmosis-waste': t('thrown away by reverse osmosis'),
};

/** Where the litres a day come from. */
export const FROM_WORDS: Record<WaterUse['from'], string> = {
  rate: t('your own figure for all aboard'),
  crew: t('summed from the crew'),
  observed: t('your observed figure, split as the crew uses it'),
};

export const SUN_WORDS = { shade: 'in the shade', some: 'some sun', full: 'full sun' } as const;
