import { createElement, Fragment, type ReactNode } from 'react';
import { piecesOf } from './t.ts';

/** As `t`, for texts with elements in them: tx`Leave with ${<b>full tanks</b>}`. */
export const tx = (strings: TemplateStringsArray, ...holes: readonly ReactNode[]): ReactNode =>
  createElement(
    Fragment,
    null,
    ...piecesOf(strings).map((piece) => (typeof piece === 'number' ? holes[piece] : piece)),
  );
