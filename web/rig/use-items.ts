import type { Commodity } from '../../server/contract/common.ts';
import { either, type Way } from '../form/either.ts';
import { type FormItem, optional, quantity } from '../form/items.ts';
import { t } from '../language/t.ts';
import type { QuantityKind } from '../units/conversions.ts';

/** A range of use: at best, typically, at worst. */
export const ratesOfUse = (of: string, at: string, kind: QuantityKind): FormItem[] => [
  quantity(t`${of} at best`, `${at}/low`, kind),
  quantity(t`${of} typically`, `${at}/typical`, kind),
  quantity(t`${of} at worst`, `${at}/high`, kind, { hint: t('the verdict uses this') }),
];

/** What must stay aboard; `first` is the way in which this commodity is told most. */
export const reserve = (commodity: Commodity, first: Way): FormItem =>
  either(
    t('Reserve'),
    `/${commodity}/reserve`,
    [
      first,
      { key: 'litres', words: t('an amount'), kind: 'volume', start: 20 },
      { key: 'fraction', words: t('a share of what the tanks give'), kind: 'share', start: 0.2 },
    ],
    'none',
  );

export const shareOfNeed = (commodity: Commodity): FormItem =>
  optional(t("and of each stretch's need"), `/${commodity}/reserve/shareOfNeed`, 'share');
