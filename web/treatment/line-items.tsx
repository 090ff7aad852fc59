import { named } from '../form/either.ts';
import { SelectRow } from '../form/FormRow.tsx';
import { below, type FieldPath, useField, useForm } from '../form/form-context.ts';
import { choice, type FormItem, optional, own, quantity, text, tick } from '../form/items.ts';
import { t } from '../language/t.ts';
import { TYPICAL_PUMP } from './edit-line.ts';
import { GERMS } from './germs.ts';
import { STAGE_WORDS } from './line-steps.ts';

/** A named target, or three figures of the reader's own. */
const TARGET = named(
  t('Must take out (bacteria, viruses, protozoa)'),
  '/target',
  [
    { value: 'purifier', words: t('purifier: 6, 4, 3 log') },
    { value: 'three-star', words: t('three-star: 4, 5, 4 log') },
    { value: 'two-star', words: t('two-star: 2, 3, 2 log') },
  ],
  {
    words: t('your own'),
    becomes: (_, { analysis }) => ({
      ...(analysis.treatment?.target.logs ?? { bacteria: 6, viruses: 4, protozoa: 3 }),
    }),
    items: GERMS.map((germs) => quantity(germs, `/${germs}`, 'log')),
  },
);

const AFTER_STAGE = own(t('after stage'), AfterStage);

/** What belongs to the line as a whole: where it works, what it is to reach, pump, taps and hoses. */
export const LINE_ITEMS: readonly FormItem[] = [
  choice(t('Works'), '/at', [
    { value: 'tap', words: t('between tank and tap') },
    { value: 'filling', words: t('while the tank is filled') },
  ]),
  TARGET,
  quantity(t('All together credited with at most'), '/maximumLog', 'log'),
  tick(
    t('Treat every source that I have not confirmed, also what others drink as it comes'),
    '/treatEverything',
  ),
  tick(t('The line may have frozen: its membranes count for nothing'), '/mayHaveFrozen'),
  {
    item: 'optional-group',
    legend: t('Pump'),
    at: '/pump',
    start: { ...TYPICAL_PUMP },
    typical: t('Typical values of a small pump: change them to those on its sheet.'),
    items: [
      quantity(t('Pressure at no flow'), '/noFlowKPa', 'pressure'),
      quantity(t('Pressure at the rated flow'), '/ratedKPa', 'pressure'),
      quantity(t('Rated flow'), '/ratedLPerMin', 'flow'),
    ],
  },
  {
    item: 'list',
    legend: t('Taps'),
    one: t('tap'),
    at: '/taps',
    fresh: (count, { said }) => ({
      name: t`tap ${count + 1}`,
      afterStage: said.rig.treatment?.stages.length ?? 0,
      use: 'drinking',
    }),
    items: [
      text(t('Tap'), '/name'),
      choice('for', '/use', [
        { value: 'drinking', words: t('drinking') },
        { value: 'kitchen', words: t('kitchen') },
        { value: 'shower', words: t('shower') },
      ]),
      AFTER_STAGE,
      optional(t('Flow as measured'), '/measuredLPerMin', 'flow', t('empty: estimated from pump and line')),
    ],
  },
  {
    item: 'list',
    legend: t('Hoses'),
    one: t('hose'),
    at: '/hoses',
    fresh: () => ({ afterStage: 0, lengthM: 2, boreMm: 10 }),
    items: [AFTER_STAGE, quantity(t('Length'), '/lengthM', 'length'), quantity(t('Bore'), '/boreMm', 'bore')],
  },
];

/** After which stage a tap or a hose branches off: a number in the file. */
function AfterStage({ at }: { at: FieldPath }) {
  const { said } = useForm();
  const field = useField(below(at, '/afterStage'));
  const stages = said.rig.treatment?.stages ?? [];
  return (
    <SelectRow
      label={t('branches off')}
      value={String(field.value ?? 0)}
      choices={[
        { value: '0', words: t('before all stages') },
        ...stages.map(({ name, kind }, index) => ({
          value: String(index + 1),
          words: t`after ${index + 1}. ${name ?? STAGE_WORDS[kind]}`,
        })),
      ]}
      onChoose={(value) => field.set(Number(value))}
    />
  );
}
