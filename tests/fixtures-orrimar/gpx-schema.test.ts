import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { SaxesParser } from 'saxes';
import { expect, it } from 'vitest';
import { describeReal, realFolderThere, realPath } from '../helpers/real.ts';
import { demoPath, demoText } from './demo-files.ts';

/** The GPX 1.1 schema, kept with the real data. */
const SCHEMA = 'schema/gpx11.xsd';

interface SchemaType {
  /** Child elements in the order of the sequence, with their types. */
  sequence: { name: string; type: string }[];
  required: string[];
}

/** Complex types of the schema: enough of XML Schema for one whose content models are all plain sequences. */
function typesOf(schema: string): Map<string, SchemaType> {
  const types = new Map<string, SchemaType>();
  let current: SchemaType | null = null;
  const parser = new SaxesParser();
  parser.on('opentag', ({ name, attributes }) => {
    if (name === 'xsd:complexType') {
      current = { sequence: [], required: [] };
      types.set(String(attributes.name), current);
    } else if (name === 'xsd:element' && current !== null) {
      current.sequence.push({ name: String(attributes.name), type: String(attributes.type) });
    } else if (name === 'xsd:attribute' && current !== null && attributes.use === 'required') {
      current.required.push(String(attributes.name));
    }
  });
  parser.on('closetag', ({ name }) => {
    if (name === 'xsd:complexType') current = null;
  });
  parser.write(schema).close();
  return types;
}

/** What in a GPX document goes against the schema's sequences and required attributes. */
function faultsOf(gpx: string, types: ReadonlyMap<string, SchemaType>): string[] {
  const faults: string[] = [];
  const stack: { type: SchemaType | undefined; reached: number }[] = [];
  const parser = new SaxesParser();
  parser.on('opentag', ({ name, attributes }) => {
    const parent = stack.at(-1);
    let typeName: string | undefined = 'gpxType';
    if (parent !== undefined) {
      const place = parent.type?.sequence.findIndex((child) => child.name === name) ?? -1;
      if (place < 0) faults.push(`${name} is not foreseen there`);
      else if (place < parent.reached) faults.push(`${name} comes too late`);
      parent.reached = Math.max(parent.reached, place);
      typeName = parent.type?.sequence[place]?.type;
    }
    const type = typeName === undefined ? undefined : types.get(typeName);
    for (const attribute of type?.required ?? []) {
      if (attributes[attribute] === undefined) faults.push(`${name} has no ${attribute}`);
    }
    stack.push({ type, reached: 0 });
  });
  parser.on('closetag', () => {
    stack.pop();
  });
  parser.write(gpx).close();
  return faults;
}

describeReal('the GPX of the demo and the schema of GPX 1.1', () => {
  const types = typesOf(realFolderThere ? readFileSync(realPath(SCHEMA), 'utf8') : '<none/>');

  it('agree on the order of elements and on required attributes', () => {
    expect(types.get('wptType')?.sequence.length).toBeGreaterThan(15);
    expect(faultsOf(demoText('route.gpx'), types)).toEqual([]);
  });

  it('would not agree if a name came before the height, or a point had no longitude', () => {
    const swapped = demoText('route.gpx').replace(/(<ele>[^<]*<\/ele>)(\s*)(<name>[^<]*<\/name>)/, '$3$2$1');
    expect(faultsOf(swapped, types)).toEqual(['ele comes too late']);
    expect(faultsOf(demoText('route.gpx').replace(/ lon="[^"]*"/, ''), types)).toEqual(['wpt has no lon']);
  });
});

const hasXmllint = spawnSync('xmllint', ['--version']).status === 0;
const reason = !hasXmllint
  ? 'xmllint is absent on this machine, so its verdict on the GPX was not asked for'
  : !realFolderThere
    ? 'the schema is not there, so xmllint was not asked about the GPX'
    : 'xmllint finds the GPX of the demo valid';

it.skipIf(!hasXmllint || !realFolderThere)(reason, () => {
  // Exit status 0 and silence, else this throws with what xmllint said.
  execFileSync('xmllint', ['--noout', '--schema', realPath(SCHEMA), demoPath('route.gpx')], {
    stdio: 'pipe',
  });
});
