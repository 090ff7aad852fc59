import { named } from '../form/either.ts';
import { SelectRow } from '../form/FormRow.tsx';
import { below, type FieldPath, useField, useForm } from '../form/form-context.ts';
import { choice, type FormItem, optional, own, quantity, text, tick } from '../form/items.ts';
import { TYPICAL_PUMP } from './edit-line.ts';
import { GERMS } from './germs.ts';
import { STAGE_WORDS } from './line-steps.ts';

/** A named target, or three figures of the reader's own. */
const TARGET = named(
  'Must take out (bacteria, viruses, protozoa)',
  '/target',
  [
    { value: 'purifier', words: 'purifier: 6, 4, 3 log' },
    { value: 'three-star', words: 'three-star: 4, 5, 4 log' },
    { value: 'two-star', words: 'two-star: 2, 3, 2 log' },
  ],
  {
    words: 'your own',
    becomes: (_, { analysis }) => ({
      ...(analysis.treatment?.target.logs ?? { bacteria: 6, viruses: 4, protozoa: 3 }),
    }),
    items: GERMS.map((germs) => quantity(germs, `/${germs}`, 'log')),
  },
);

const AFTER_STAGE = own('after stage', AfterStage);

/** What belongs to the line as a whole: where it works, what it is to reach, pump, taps and hoses. */
export const LINE_ITEMS: readonly FormItem[] = [
  choice('Works', '/at', [
    { value: 'tap', words: 'between tank and tap' },
    { value: 'filling', words: 'while the tank is filled' },
  ]),
  TARGET,
  quantity('All together credited with at most', '/maximumLog', 'log'),
  tick(
    'Treat every source that I have not confirmed, also what others drink as it comes',
    '/treatEverything',
  ),
  tick('The line may have frozen: its membranes count for nothing', '/mayHaveFrozen'),
  {
    item: 'optional-group',
    legend: 'Pump',
    at: '/pump',
    start: { ...TYPICAL_PUMP },
    typical: 'Typical values of a small pump: change them to those on its sheet.',
    items: [
      quantity('Pressure at no flow', '/noFlowKPa', 'pressure'),
      quantity('Pressure at the rated flow', '/ratedKPa', 'pressure'),
      quantity('Rated flow', '/ratedLPerMin', 'flow'),
    ],
  },
  {
    item: 'list',
    legend: 'Taps',
    one: 'tap',
    at: '/taps',
    fresh: (count, { said }) => ({
      name: `tap ${count + 1}`,
      afterStage: said.rig.treatment?.stages.length ?? 0,
      use: 'drinking',
    }),
    items: [
      text('Tap', '/name'),
      choice('for', '/use', [
        { value: 'drinking', words: 'drinking' },
        { value: 'kitchen', words: 'kitchen' },
        { value: 'shower', words: 'shower' },
      ]),
      AFTER_STAGE,
      optional('Flow as measured', '/measuredLPerMin', 'flow', 'empty: estimated from pump and line'),
    ],
  },
  {
    item: 'list',
    legend: 'Hoses',
    one: 'hose',
    at: '/hoses',
    fresh: () => ({ afterStage: 0, lengthM: 2, boreMm: 10 }),
    items: [AFTER_STAGE, quantity('Length', '/lengthM', 'length'), quantity('Bore', '/boreMm', 'bore')],
  },
];

/** After which stage a tap or a hose branches off: a number in the file. */
function AfterStage({ at }: { at: FieldPath }) {
  const { said } = useForm();
  const field = useField(below(at, '/afterStage'));
  const stages = said.rig.treatment?.stages ?? [];
  return (
    <SelectRow
      label="branches off"
      value={String(field.value ?? 0)}
      choices={[
        { value: '0', words: 'before all stages' },
        ...stages.map(({ name, kind }, index) => ({
          value: String(index + 1),
          words: `after ${index + 1}. ${name ?? STAGE_WORDS[kind]}`,
        })),
      ]}
      onChoose={(value) => field.set(Number(value))}
    />
  );
}
