import type { Surface } from '../../server/contract/surface.ts';
import { type FormItem, fold, group, optional, quantity, says } from '../form/items.ts';
import { t } from '../language/t.ts';
import { SURFACE_CHOICES } from '../words/surface-choices.ts';

/** Slow, typical and fast to begin with on each surface, km/h (ours). */
const TYPICAL_PACE: Record<Surface, { slow: number; typical: number; fast: number }> = {
  sealed: { slow: 70, typical: 80, fast: 95 },
  gravel: { slow: 45, typical: 55, fast: 70 },
  track: { slow: 20, typical: 30, fast: 40 },
  sand: { slow: 15, typical: 20, fast: 30 },
  rock: { slow: 6, typical: 10, fast: 15 },
  mud: { slow: 6, typical: 12, fast: 20 },
  salt: { slow: 30, typical: 45, fast: 60 },
  unknown: { slow: 25, typical: 35, fast: 50 },
};
const ENDS = ['slow', 'typical', 'fast'] as const;

const onSurface = (surface: Surface, words: string): string =>
  surface === 'unknown' ? t('where the surface is unknown') : t`on ${words}`;

/** Hours and speed, by surface where that is told. */
export const PACE_ITEMS: readonly FormItem[] = [
  quantity(t('Driving a day'), '/pace/hoursPerDay', 'hours'),
  quantity(t('Slow'), '/pace/kmPerHour/slow', 'speed', { hint: t('the verdict uses this') }),
  quantity(t('Typical'), '/pace/kmPerHour/typical', 'speed'),
  quantity(t('Fast'), '/pace/kmPerHour/fast', 'speed'),
  fold(t('Pace by surface'), [
    says(
      t(
        'Counts where the trip names the surface. Without it the pace above is taken, slowed on rough ground.',
      ),
    ),
    ...SURFACE_CHOICES.map(
      ({ value, words }): FormItem => ({
        item: 'part',
        what: t`a pace ${onSurface(value, words)}`,
        at: `/pace/bySurface/${value}`,
        without: '',
        start: { kmPerHour: { ...TYPICAL_PACE[value] } },
        items: [
          group(t`Pace ${onSurface(value, words)}`, [
            ...ENDS.map((end) =>
              quantity(end, `/kmPerHour/${end}`, 'speed', { typical: TYPICAL_PACE[value][end] }),
            ),
            optional(t('Driving a day'), '/hoursPerDay', 'hours', t('empty: as above')),
          ]),
        ],
      }),
    ),
  ]),
];
