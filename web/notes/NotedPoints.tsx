import type { TripFile } from '../../server/contract/trip.ts';
import { useForm } from '../form/form-context.ts';
import { t } from '../language/t.ts';

type Kind = 'confirmations' | 'corrections';

/** What was found out and corrected of single points, each with a way to take it back. */
export function NotedPoints() {
  const { said, analysis, onEdit } = useForm();
  const { confirmations = [], corrections = [] } = said.trip;
  if (confirmations.length + corrections.length === 0) return null;
  const nameOf = (id: string): string => {
    const passing = analysis.passings.find((one) => one.id === id || one.alsoIds.includes(id));
    return passing?.name ?? (passing === undefined ? id : `${passing.kind} (${id})`);
  };
  const row = (kind: Kind, index: number, text: string) => (
    <li key={`${kind} ${index}`}>
      {text}{' '}
      <button
        type="button"
        className="quiet"
        aria-label={t`Take out: ${text}`}
        onClick={() => onEdit({ ...said, trip: without(said.trip, kind, index) })}
      >
        {t('Take out')}
      </button>
    </li>
  );
  return (
    <section aria-labelledby="noted-points">
      <h3 id="noted-points">{t('What you found out')}</h3>
      <ul>
        {confirmations.map(({ id, on, works, by, until }, index) =>
          row(
            'confirmations',
            index,
            `${nameOf(id)} ${works ? 'works' : t('does not work')}: ${on}${by === undefined ? '' : `, ${by}`}${until === undefined ? '' : t`, until ${until}`}.`,
          ),
        )}
        {corrections.map(({ id, on, by }, index) =>
          row('corrections', index, t`${nameOf(id)} corrected: ${on}${by === undefined ? '' : `, ${by}`}.`),
        )}
      </ul>
    </section>
  );
}

function without(trip: TripFile, kind: Kind, index: number): TripFile {
  const { [kind]: entries = [], ...others } = trip;
  const left = (entries as readonly unknown[]).filter((_, place) => place !== index);
  return left.length === 0 ? others : { ...others, [kind]: left };
}
