import type { Comparison } from '../../server/contract/answers/compare.ts';
import { VerdictMark } from '../kit/VerdictMark.tsx';
import type { UnitSystem } from '../units/units.ts';
import { bestOf, CRITERIA } from './criteria.ts';
import '../table/plain-table.css';
import { t } from '../language/t.ts';

/** Rigs side by side; the best of each row is bold, and said to be so. */
export function CompareTable({ comparison, units }: { comparison: Comparison; units: UnitSystem }) {
  const { rigs } = comparison;
  return (
    // Many rigs are wider than the panel: the table scrolls by itself, by keyboard too.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard (WCAG 2.1.1).
    <section className="compare-scroll" aria-label={t('Rigs side by side')} tabIndex={0}>
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">{t('At its worst')}</th>
            {rigs.map((rig) => (
              <th scope="col" key={rig.name}>
                {rig.name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {CRITERIA.map(({ name, cell }) => {
            const cells = rigs.map((rig) => ({ rig: rig.name, ...cell(rig, units) }));
            const best = bestOf(cells);
            return (
              <tr key={name}>
                <th scope="row">{name}</th>
                {cells.map((one, place) => (
                  <td key={one.rig}>
                    {one.verdict !== undefined && (
                      <>
                        <VerdictMark verdict={one.verdict} />{' '}
                      </>
                    )}
                    {best[place] === true ? (
                      <b>
                        {one.text}
                        <span className="only-read">{t(' (best)')}</span>
                      </b>
                    ) : (
                      one.text
                    )}
                    {one.second !== undefined && <span className="second">{one.second}</span>}
                  </td>
                ))}
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
