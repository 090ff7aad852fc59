import { useId } from 'react';
import { t } from '../language/t.ts';
import { formatAtKm, formatKm, type UnitSystem } from '../units/units.ts';
import { saidIn } from '../words/said.ts';
import { countsWords, WATER_CLASS_WORDS } from '../words/words.ts';
import type { SupplyFacts, SupplyPointFacts } from './supply-facts.ts';

interface Props {
  facts: SupplyPointFacts;
  /** Where the plan fills, as "fuel node/1"; null without a plan. */
  used: ReadonlySet<string> | null;
  units: UnitSystem;
  onClose(): void;
}

/** What a supply point is, where the route comes by, why it counts or not, and its tags as mapped. */
export function SupplyCard({ facts, used, units, onClose }: Props) {
  const title = useId();
  const name = facts.name ?? facts.commodities[0]?.kind ?? facts.id;
  return (
    <section className="supply-card" role="dialog" aria-labelledby={title}>
      <button type="button" className="supply-close" onClick={onClose} aria-label={t`Close ${name}`}>
        ×
      </button>
      <h3 id={title}>{name}</h3>
      {facts.commodities.map((one) => (
        <CommodityFacts
          key={one.commodity}
          facts={one}
          used={used === null ? null : used.has(`${one.commodity} ${facts.id}`)}
          units={units}
          named={facts.name !== null}
        />
      ))}
      <details>
        <summary>
          {facts.tags.length === 1 ? t('1 tag') : t`${facts.tags.length} tags`}, {facts.id}
        </summary>
        <dl className="supply-tags">
          {facts.tags.map(([key, value]) => (
            <div key={key}>
              <dt>{key}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      </details>
    </section>
  );
}

function CommodityFacts(props: {
  facts: SupplyFacts;
  used: boolean | null;
  units: UnitSystem;
  named: boolean;
}) {
  const { facts, used, units, named } = props;
  const { commodity, kind, counts, evidence, waterClass, reasons, passings } = facts;
  return (
    <div className={`supply-facts supply-${commodity}`}>
      <p className="supply-kind">
        <span
          className={`supply-mark supply-mark-${commodity}${counts ? '' : ' supply-mark-hollow'}`}
          aria-hidden="true"
        />
        {named && `${kind}: `}
        <b>{countsWords(counts)}</b>
        {`, ${evidence}`}
        {waterClass !== undefined && `, ${WATER_CLASS_WORDS[waterClass]}`}
      </p>
      {reasons.length > 0 && (
        <ul>
          {reasons.map((reason) => (
            <li key={reason.code}>{saidIn(units, reason)}</li>
          ))}
        </ul>
      )}
      <ul className="supply-passings">
        {passings.map((passing) => (
          <li key={passing.atKm}>
            <b>{formatAtKm(passing.atKm, units)}</b>
            {t`, ${formatKm(passing.offRouteKm, units)} off the route, detour ${formatKm(passing.detourKm, units)} one way`}
          </li>
        ))}
      </ul>
      {used !== null && counts && <p>{used ? t('The plan fills here.') : t('The plan passes it by.')}</p>}
      {facts.rescueOnly && <p>{t('Beyond the corridor: listed because a stretch is short.')}</p>}
    </div>
  );
}
