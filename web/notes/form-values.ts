/** What stands in a field of a form, undefined where nothing does. */
export function typedIn(form: FormData, name: string): string | undefined {
  const value = form.get(name);
  const text = typeof value === 'string' ? value.trim() : '';
  return text === '' ? undefined : text;
}

type Told<Key extends string> = { [K in Key]?: string };

/** Those fields of a form that hold something. */
export function toldIn<Key extends string>(form: FormData, ...names: readonly Key[]): Told<Key> {
  const told = names.flatMap((name) => {
    const value = typedIn(form, name);
    return value === undefined ? [] : [[name, value] as const];
  });
  return Object.fromEntries(told) as Told<Key>;
}
