import { type Static, Type } from 'typebox';

/** The sizes that the sheet is printed on. */
export const Paper = Type.Union([Type.Literal('a4'), Type.Literal('letter')]);
export type Paper = Static<typeof Paper>;
export const PAPERS: readonly Paper[] = ['a4', 'letter'];
