import type { Parts } from '../../../contract/common.ts';
import { readerText } from '../../../words/parts/reader-figures.ts';
import { plain } from './plain.ts';

/** What core said, in the reader's units by the parts beside its text; it has none where it has no figures. */
export const saidText = ({ text, parts }: { readonly text: string; readonly parts?: Parts }): string =>
  plain(parts === undefined ? text : readerText(parts));
