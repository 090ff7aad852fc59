import { useId } from 'react';
import type { Confirmation } from '../../server/contract/notes.ts';
import { t } from '../language/t.ts';

interface SaidInput {
  /** Of the contract: what a reader of the form asks for, whatever the language. */
  name: keyof Confirmation;
  words: string;
  type?: 'text' | 'tel' | 'date';
  hint?: string;
  /** As the contract has it. */
  most?: number;
}

const SAID: readonly SaidInput[] = [
  { name: 'by', words: t('Who said it'), most: 120 },
  { name: 'phone', words: t('Telephone'), type: 'tel', most: 60 },
  { name: 'words', words: t('What they said'), most: 500 },
];

const DAYS: readonly SaidInput[] = [
  { name: 'from', words: t('Holds from'), type: 'date', hint: t('empty: from today') },
  { name: 'until', words: t('until'), type: 'date', hint: t('empty: 30 days after the departure') },
];

/** Who said something, and from when to when it holds; read from the form by `saidIn`. */
export const SaidFields = ({ withDays }: { withDays: boolean }) => (
  <div className="note-fields">
    {[...SAID, ...(withDays ? DAYS : [])].map((input) => (
      <SaidField key={input.name} {...input} />
    ))}
  </div>
);

function SaidField({ name, words, type = 'text', hint, most }: SaidInput) {
  const id = useId();
  return (
    <p>
      <label htmlFor={id}>{words}</label>
      <input
        id={id}
        name={name}
        type={type}
        maxLength={most}
        autoComplete="off"
        aria-describedby={hint && `${id}-hint`}
      />
      {hint !== undefined && (
        <span id={`${id}-hint`} className="second">
          {hint}
        </span>
      )}
    </p>
  );
}
