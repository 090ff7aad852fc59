import type { ReactNode } from 'react';
import type { Commodity } from '../../server/contract/common.ts';
import { t } from '../language/t.ts';
import { formatAtKm, type UnitSystem } from '../units/units.ts';
import { countsWords } from '../words/words.ts';
import { countsOf, nameOf, type SupplyRow } from './stops.ts';

interface StopSuppliesProps {
  stop: SupplyRow;
  /** Key of the member that is unfolded. */
  open: string | null;
  units: UnitSystem;
  onOpen: (member: SupplyRow | null) => void;
  /** What is known of one of them. */
  children: (member: SupplyRow) => ReactNode;
}

/** The supplies of one stop, each of them to be unfolded. */
export function StopSupplies({ stop, open, units, onOpen, children }: StopSuppliesProps) {
  return (
    <ul className="stop-supplies">
      {stop.members.map((member) => {
        const { passing, key } = member;
        const isOpen = key === open;
        return (
          <li key={key}>
            <button
              type="button"
              className="row-button"
              aria-expanded={isOpen}
              onClick={() => onOpen(isOpen ? null : member)}
            >
              <SupplyName row={member} /> {formatAtKm(passing.atKm, units)},{' '}
              <span className={passing.counts ? 'counts' : 'counts-not'}>{countsWords(passing.counts)}</span>
            </button>
            {isOpen && children(member)}
          </li>
        );
      })}
    </ul>
  );
}

/** Name and kind of one supply, with the mark of its commodity. */
export const SupplyName = ({ row: { passing } }: { row: SupplyRow }) => (
  <>
    <span className={`swatch swatch-${passing.commodity}${passing.counts ? '' : ' hollow'}`} />
    <span className="only-read">{t`${passing.commodity}:`} </span>
    {nameOf(passing)} <span className="second">{passing.name === null ? passing.id : passing.kind}</span>
  </>
);

/** So many of the supplies of a stop that matter are named in its row (ours). */
const NAMED = 3;

/** "Tarrowby: 5 stations, 2 taps", and which of them must not go under. */
export function StopName({
  stop,
  place,
  named,
}: {
  stop: SupplyRow;
  place: string | null;
  named: SupplyRow[];
}) {
  const names = [...new Set(named.map(({ passing }) => nameOf(passing)))];
  const more = names.length - NAMED;
  const told = names.slice(0, NAMED).join(', ');
  return (
    <>
      {COMMODITIES.filter((commodity) =>
        stop.members.some(({ passing }) => passing.commodity === commodity),
      ).map((commodity) => (
        <span
          key={commodity}
          className={`swatch swatch-${commodity}${isRelied(stop, commodity) ? '' : ' hollow'}`}
        />
      ))}
      {place === null ? '' : `${place}: `}
      {countsOf(stop)}{' '}
      {names.length > 0 && (
        <span className="second">
          {more > 0 ? t`relied on: ${told} and ${more} more` : t`relied on: ${told}`}
        </span>
      )}
    </>
  );
}

const COMMODITIES = ['fuel', 'water'] as const;

const isRelied = ({ members }: SupplyRow, commodity: Commodity): boolean =>
  members.some(({ passing }) => passing.commodity === commodity && passing.counts);

/** How many of a stop's supplies are relied on. */
export function KnownOfStop({ stop: { members } }: { stop: SupplyRow }) {
  const count = members.filter(({ passing }) => passing.counts).length;
  return count === 0 ? (
    <span className="counts-not">{countsWords(false)}</span>
  ) : (
    <>
      <span className="counts">{countsWords(true)}</span>{' '}
      <span className="second">{t`${count} of ${members.length}`}</span>
    </>
  );
}
