import { readFileSync } from 'node:fs';

const packageJson = new URL('../../package.json', import.meta.url);
const { name, version, homepage } = JSON.parse(readFileSync(packageJson, 'utf8')) as {
  name: string;
  version: string;
  homepage?: string;
};

/** This program's version, as package.json and CHANGELOG.md have it. */
export const VERSION = version;

/** The environment variable that says whom a server that is asked may write to: an address of the net or of mail. */
const CONTACT_VARIABLE = 'DRYSTAGE_CONTACT';

/** A header carries printable ASCII (RFC 9110, 5.5); brackets and backslashes would end the comment that it stands in. */
const isPlain = (character: string): boolean =>
  character > ' ' && character <= '~' && !'()\\'.includes(character);

/** Whom to write to, in signs that a header may carry; null where nobody is named. */
function contactOf(env: Readonly<Record<string, string | undefined>>): string | null {
  const plain = [...(env[CONTACT_VARIABLE] ?? '')].filter(isPlain).slice(0, 200).join('');
  return plain === '' ? (homepage ?? null) : plain;
}

/** How the program names itself to servers that it asks: name and version, and whom to write to where that is known. */
export function userAgent(env: Readonly<Record<string, string | undefined>>): string {
  const contact = contactOf(env);
  return `${name}/${version}${contact === null ? '' : ` (+${contact})`}`;
}
