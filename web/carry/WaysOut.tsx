import type { Plan, WayOut } from '../../server/contract/plan.ts';
import type { FuelKind } from '../../server/contract/rig.ts';
import { andAll, worded } from '../language/codes.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import type { Rest } from '../state/use-plan.ts';
import { formatFigure, formatKm, formatLitres, formatMass, type UnitSystem } from '../units/units.ts';
import { contentWord, countCans, placeWords } from '../words/plan-words.ts';
import { inUnits, saidIn } from '../words/said.ts';

interface WaysOutProps {
  plan: Plan;
  rest: Rest;
  units: UnitSystem;
}

interface BreaksProps extends Omit<WaysOutProps, 'rest'> {
  kind: FuelKind;
}

/** Which stretch makes a plan impossible, and by how much. */
export function Breaks({ plan, kind, units }: BreaksProps) {
  return (
    <ul>
      {plan.breaks.map(({ cause, from, to, missingL, text, parts }) => (
        <li key={`${cause} ${text}`}>
          {from !== null && to !== null && missingL !== null && (
            <b>{tx`${formatLitres(missingL, units)} of ${contentWord(cause === 'water' ? cause : 'fuel', kind)} too little, ${placeWords(from, units)} to ${placeWords(to, units)}.`}</b>
          )}{' '}
          <span className={from === null ? undefined : 'second'}>{inUnits(units, text, parts)}</span>
        </li>
      ))}
    </ul>
  );
}

/** The changes with which there is a plan, or one without more cans; apart from them those that hang on a call. */
export function WaysOut({ plan, rest, units }: WaysOutProps) {
  const waits = plan.waysOut.filter(({ telephoneFirst }) => telephoneFirst);
  const ready = plan.waysOut.filter(({ telephoneFirst }) => !telephoneFirst);
  return (
    <>
      <section aria-labelledby="plan-ways">
        <h3 id="plan-ways">{tx`${plan.status === 'found' ? t('Or without more cans') : t('Ways out')}, each reckoned again`}</h3>
        {rest === 'there' ? (
          <>
            {ready.length === 0 ? <p>{t('None was found.')}</p> : <Ways ways={ready} units={units} />}
            {!plan.waysOutComplete && <p>{t('Not all were tried: the time ran out.')}</p>}
          </>
        ) : (
          <p className="soft">{rest === 'coming' ? t('Being tried…') : t('Not tried.')}</p>
        )}
      </section>
      {waits.length > 0 && (
        <section aria-labelledby="plan-doubtful">
          <h3 id="plan-doubtful">{t('Only after a telephone call')}</h3>
          <Ways ways={waits} units={units} />
        </section>
      )}
    </>
  );
}

const WAY_WORDS: Record<WayOut['kind'], string> = {
  'fill-first': t('Fill before leaving'),
  'more-cans': t('More cans'),
  'less-washing': t('Less washing'),
  'longer-days': t('Longer days'),
  depot: t('A depot laid beforehand'),
  'other-stop': t('Another stop'),
};

const wayWords = ({ kind, stops }: WayOut): string =>
  stops === undefined ? WAY_WORDS[kind] : t`By ${andAll(stops.map((stop) => stop.name ?? stop.kind))}`;

type AmountWords = (way: WayOut, units: UnitSystem) => string;
const AMOUNT_WORDS: Record<WayOut['unit'], AmountWords> = {
  cans: ({ amount }) => t`${countCans(amount)} more`,
  'l a day': ({ amount }, units) => t`${formatLitres(amount, units)} a day less`,
  'hours a day': ({ amount }) => t`${formatFigure(amount, 1)}\u00a0hours a day`,
  l: ({ amount, depots, fills }, units) =>
    fills === undefined
      ? t`${formatLitres(depots?.reduce((sum, { litres }) => sum + litres, 0) ?? amount, units)} laid`
      : andAll(
          fills.map(({ commodity, litres }) => t`${formatLitres(litres, units)} of ${worded(commodity)}`),
        ),
  km: ({ amount, stops }, units) =>
    t`${formatKm(stops?.reduce((sum, { drivingKm }) => sum + drivingKm, 0) ?? amount, units)} there and back`,
};

function Ways({ ways, units }: { ways: readonly WayOut[]; units: UnitSystem }) {
  return (
    <ul>
      {ways.map((way) => (
        <li key={`${way.kind} ${way.text}`}>{tx`${(
          <b>
            {wayWords(way)}: {AMOUNT_WORDS[way.unit](way, units)}
          </b>
        )}, ${way.moreKg > 0 && t`${formatMass(way.moreKg, units)} more when full, `}${way.cans.fuel} fuel and ${way.cans.water} water cans in all. ${<span className="second">{saidIn(units, way)}</span>}`}</li>
      ))}
    </ul>
  );
}
