import type { StageKind } from '../../server/contract/treatment.ts';
import {
  type FormItem,
  fold,
  type GroupItem,
  group,
  optional,
  quantity,
  text,
  tick,
  when,
} from '../form/items.ts';
import { t } from '../language/t.ts';
import { STAGE_KEYS, type StageKey, TYPICAL_DROP } from './edit-line.ts';
import { GERMS } from './germs.ts';
import { STAGE_KINDS, STAGE_WORDS } from './line-steps.ts';

/** What a stage can tell of itself, in this order. */
const OF_ANY: Record<StageKey, FormItem> = {
  poreMicron: optional(t('Pores, absolute'), '/poreMicron', 'pores'),
  recovery: optional(t('Of the water becomes clean'), '/recovery', 'share', t('the rest is thrown away')),
  doseMJPerCm2: optional(
    t('Dose at the end of its life'),
    '/doseMJPerCm2',
    'dose',
    t('40 and more count; less only against cysts'),
  ),
  flowLPerMin: optional(t('Makes at most'), '/flowLPerMin', 'flow'),
  mgPerLitre: optional(t('Free chlorine dosed'), '/mgPerLitre', 'strength'),
  productPercent: optional(t('of a product of'), '/productPercent', 'percent', t('empty: bleach of 6 %')),
  minutes: optional(t('Contact'), '/minutes', 'minutes'),
  standsNtu: optional(
    t('Stands water as cloudy as'),
    '/standsNtu',
    'cloudiness',
    t('1 NTU looks clear, 50 like a stirred river'),
  ),
  leavesNtu: optional(t('and leaves'), '/leavesNtu', 'cloudiness'),
  lifeLitres: optional(t('Lasts for'), '/lifeLitres', 'volume'),
  usedLitres: optional(t('of it used before the trip'), '/usedLitres', 'volume'),
  drop: {
    item: 'optional-group',
    legend: t('Pressure it takes'),
    at: '/drop',
    start: { ...TYPICAL_DROP },
    typical: t('Typical values: change them to those of its maker.'),
    items: [quantity(t('Takes'), '/kPa', 'pressure'), quantity('at', '/atLPerMin', 'flow')],
  },
  backwash: tick(t('Can be washed backwards'), '/backwash'),
  mayHaveFrozen: tick(t('May have frozen: counts for nothing'), '/mayHaveFrozen'),
};

const RATED_FLOW = optional(t('Rated up to'), '/flowLPerMin', 'flow');

/** What is called otherwise of one kind. */
const OF_ONE: Partial<Record<StageKind, Partial<Record<StageKey, FormItem>>>> = {
  uv: { flowLPerMin: optional(t('Gives its dose up to'), '/flowLPerMin', 'flow') },
  sediment: { flowLPerMin: RATED_FLOW },
  carbon: { flowLPerMin: RATED_FLOW },
  microfilter: { flowLPerMin: RATED_FLOW },
  ultrafilter: { flowLPerMin: RATED_FLOW },
  boiling: { minutes: optional(t('Rolling boil'), '/minutes', 'minutes') },
};

const TAKES_OUT = fold(t('What its maker says it takes out'), [
  ...GERMS.map((germs) => optional(t`${germs}, as log`, `/logs/${germs}`, 'log')),
  ...GERMS.map((germs) =>
    optional(
      t`or ${germs} stopped`,
      `/stopsPercent/${germs}`,
      'percent',
      germs === 'bacteria' ? '94 % is 1.22 log' : undefined,
    ),
  ),
]);

/** The fields of a stage of a kind. */
function stageItems(kind: StageKind): FormItem[] {
  const keys = (Object.keys(OF_ANY) as StageKey[]).filter((key) => STAGE_KEYS[kind].includes(key));
  return [text(t('Called'), '/name'), ...keys.map((key) => OF_ONE[kind]?.[key] ?? OF_ANY[key]), TAKES_OUT];
}

/** The same under its name, by which they are found. */
export const stageGroup = (kind: StageKind): GroupItem => group(STAGE_WORDS[kind], stageItems(kind));

/** The fields of the stages that are told, of whatever kind. */
export const TOLD_STAGES: readonly FormItem[] = STAGE_KINDS.map((kind) =>
  when(
    ({ said }) => said.rig.treatment?.stages.some((stage) => stage.kind === kind) === true,
    [stageGroup(kind)],
  ),
);
