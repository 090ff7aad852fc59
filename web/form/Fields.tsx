import type { ReactNode } from 'react';
import { Searched } from './FindFields.tsx';
import { SelectRow } from './FormRow.tsx';
import { below, type FieldPath, useField, useForm } from './form-context.ts';
import { ChoiceField, ClockField, QuantityField, TextField, TickField } from './inputs.tsx';
import type { FormItem, SwitchItem } from './items.ts';
import { ListFields } from './ListFields.tsx';
import { OptionalGroup, PartFields } from './Part.tsx';
import { RangeField } from './RangeField.tsx';

/** A form, or a part of one, drawn from its items; their paths begin at `at`. Of one that is searched only what is found. */
export function Fields({ items, at }: { items: readonly FormItem[]; at: FieldPath }): ReactNode {
  return items.map((item) => (
    <Searched key={keyOf(item)} item={item}>
      {(unfolded) => <Item {...{ item, unfolded }} base={at} />}
    </Searched>
  ));
}

/** What tells an item apart from the others beside it. */
function keyOf(item: FormItem): string {
  if ('label' in item) return `${item.item} ${item.at} ${item.label}`;
  if ('legend' in item) return `${item.item} ${item.at} ${item.legend}`;
  switch (item.item) {
    case 'part':
      return `part ${item.at}`;
    case 'fold':
      return `fold ${typeof item.summary === 'string' ? item.summary : item.summary.name}`;
    case 'note':
      return item.words;
    case 'case':
      return `case ${item.items.map(keyOf).join(' ')}`;
    case 'own':
      return `own ${item.name}`;
  }
}

interface ItemProps<Kind extends FormItem> {
  item: Kind;
  base: FieldPath;
  /** What folds is open at first. */
  unfolded: boolean;
}

function Item({ item, base, unfolded }: ItemProps<FormItem>): ReactNode {
  switch (item.item) {
    case 'quantity':
      return <QuantityField {...item} base={base} />;
    case 'range':
      return <RangeField {...item} base={base} />;
    case 'text':
      return <TextField {...item} base={base} />;
    case 'clock':
      return <ClockField {...item} base={base} />;
    case 'choice':
      return <ChoiceField {...item} base={base} />;
    case 'tick':
      return <TickField {...item} base={base} />;
    case 'switch':
      return <SwitchField {...item} base={base} />;
    case 'note':
      return <p className={item.tone}>{item.words}</p>;
    case 'own':
      return <item.Component at={base} />;
    default:
      return <Holder {...{ item, base, unfolded }} />;
  }
}

/** The way in which something is told, and what that way asks for. */
function SwitchField({ base, label, at, options }: SwitchItem & { base: FieldPath }) {
  const form = useForm();
  const place = below(base, at);
  const field = useField(place);
  const chosen = options.find((option) => option.holds(field.value));
  return (
    <>
      <SelectRow
        label={label}
        assumed={field.assumed}
        error={field.refused}
        value={chosen?.value ?? ''}
        choices={options}
        onChoose={(value) => {
          const next = options.find((option) => option.value === value);
          if (next !== undefined) field.set(next.becomes(field.value, form));
        }}
      />
      <Fields items={chosen?.items ?? []} at={place} />
    </>
  );
}

type HolderItem = Exclude<Extract<FormItem, { items: readonly FormItem[] }>, { item: 'own' }>;

/** What holds further items. */
function Holder({ item, base, unfolded }: ItemProps<HolderItem>): ReactNode {
  const form = useForm();
  // What is inside something with a path of its own stands there.
  const inside = <Fields items={item.items} at={'at' in item ? below(base, item.at) : base} />;
  switch (item.item) {
    case 'list':
      return (
        <ListFields {...item} base={base}>
          {(entry) => <Fields items={item.items} at={entry} />}
        </ListFields>
      );
    case 'part':
      return (
        <PartFields {...item} base={base}>
          {inside}
        </PartFields>
      );
    case 'optional-group':
      return (
        <OptionalGroup {...item} base={base}>
          {inside}
        </OptionalGroup>
      );
    case 'group':
      return (
        <fieldset>
          <legend>{item.legend}</legend>
          {inside}
        </fieldset>
      );
    case 'fold':
      return (
        <details open={unfolded}>
          <summary>{typeof item.summary === 'string' ? item.summary : <item.summary at={base} />}</summary>
          {inside}
        </details>
      );
    case 'case':
      return item.when(form) ? inside : null;
  }
}
