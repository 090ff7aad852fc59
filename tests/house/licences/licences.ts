/** A package that the lock file installs. */
export interface LockedPackage {
  name: string;
  version: string;
  licence: string;
  /** Only for building and testing. */
  dev: boolean;
}

/** The part of package-lock.json that is read here. */
export interface LockFile {
  packages: Record<string, { version?: string; license?: string; dev?: boolean; devOptional?: boolean }>;
}

/** Licences of packages whose package.json names none in a form that npm reads, as read from the file named. */
const READ: Readonly<Record<string, string>> = {
  'arc@0.2.0': 'BSD-2-Clause', // LICENSE.md; what it has from GDAL: MIT
  'base64-js@0.0.2': 'MIT', // names none itself; all later versions do
  'dejavu-fonts-ttf@2.37.3': 'Bitstream-Vera', // LICENSE: Bitstream Vera's terms, what is added is in the public domain
  'domhandler@2.2.1': 'BSD-2-Clause', // LICENSE
  'domutils@1.3.0': 'BSD-2-Clause', // LICENSE
  'JSONStream@0.8.0': '(MIT OR Apache-2.0)', // LICENSE.MIT, LICENSE.APACHE2
  'memorystream@0.3.1': 'MIT', // licenses, in package.json
  'png-js@1.1.0': 'MIT', // LICENSE
  'suncalc@2.0.2': 'BSD-2-Clause', // LICENSE
};

/** What may be used freely with the notice kept. The last ones are older names and slips for the ones before. */
const PERMISSIVE = [
  'MIT',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Apache-2.0',
  '0BSD',
  'BlueOak-1.0.0',
  'Unlicense',
  'CC0-1.0',
  'OFL-1.1',
  'Zlib',
  'MIT/X11',
  'BSD',
  'BDS-3-Clause',
];

/** What asks for more than a notice: each with what it asks and how that is met. None of them is changed here. */
const WITH_TERMS: Readonly<Record<string, string>> = {
  // opening_hours: whoever gets the program can put another version in its place, as it is taken from npm unbundled.
  'LGPL-3.0-only': 'a library of its own on the server; not in the page',
  // The letters of PDF files: they may be embedded and given out, not sold alone, and not changed under their name.
  'Bitstream-Vera': 'given out as they are, with their notice',
  // lightningcss (builds the page's styles), axe-core (tests): neither goes into what is given out.
  'MPL-2.0': 'changed files stay under it; none is changed',
  // jsts, under Turf: of the two, EDL is BSD-3-Clause.
  'EDL-1.0': 'BSD-3-Clause under another name',
  // caniuse-lite: data for tools.
  'CC-BY-4.0': 'its maker is named',
};

/** All packages of a lock file, by name and version. */
export function lockedPackages({ packages }: LockFile): LockedPackage[] {
  return Object.entries(packages)
    .filter(([path]) => path !== '')
    .map(([path, { version = '', license, dev = false, devOptional = false }]) => {
      const name = path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);
      const licence = READ[`${name}@${version}`] ?? license ?? 'none named';
      return { name, version, licence, dev: dev || devOptional };
    })
    .sort((a, b) => `${a.name}@${a.version}`.localeCompare(`${b.name}@${b.version}`));
}

/** Whether a licence, or one of several to choose from, is on the list; of several that all hold, each. */
export function isAllowed(licence: string): boolean {
  const choices = licence.replace(/^\(|\)$/g, '').split(/ or /i);
  return choices.some((choice) =>
    choice.split(/ and /i).every((one) => PERMISSIVE.includes(one) || Object.hasOwn(WITH_TERMS, one)),
  );
}
