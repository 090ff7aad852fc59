import { escapeUnseen } from '../core/input/unseen.ts';

/** A value as JSON in one line that is safe for a terminal: the same value when it is parsed. */
export const jsonLine = (value: unknown): string => `${escapeUnseen(JSON.stringify(value))}\n`;
