import type { Matter } from '../../server/contract/whatif.ts';
import { figureLitres, type UnitSystem, volumeUnit } from '../units/units.ts';
import { inUnits } from '../words/said.ts';
import '../table/plain-table.css';
import { worded } from '../language/codes.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';

interface MatterTableProps {
  matters: readonly Matter[];
  units: UnitSystem;
}

/** Which assumption matters most: each moved by one step, and what that does to the least margin. */
export function MatterTable({ matters, units }: MatterTableProps) {
  const volume = volumeUnit(units);
  return (
    <table className="plain-table">
      <caption>{t('Which assumption matters most')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('One step')}</th>
          <th scope="col">{t('of')}</th>
          <th scope="col" className="end">{tx`least margin ${volume}`}</th>
          <th scope="col" className="end">{tx`change ${volume}`}</th>
        </tr>
      </thead>
      <tbody>
        {matters.map(({ assumption, step, stepParts, commodity, beforeL, afterL, changeL }) => (
          <tr key={`${assumption} ${commodity} ${step}`}>
            <th scope="row">{inUnits(units, step, stepParts)}</th>
            <td>{worded(commodity)}</td>
            <td className="end">{tx`${figureLitres(beforeL, units)} to ${figureLitres(afterL, units)}`}</td>
            <td className="end">{figureLitres(changeL, units)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
