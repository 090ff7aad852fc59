import { useMemo, useState } from 'react';
import type { RigFile } from '../../server/contract/rig.ts';
import { useForm } from '../form/form-context.ts';
import { FilePick } from '../kit/FilePick.tsx';
import { Problem } from '../kit/Problem.tsx';
import { openPlan } from '../state/open-plan.ts';
import { formatAtKm } from '../units/units.ts';
import { withoutPaths } from '../words/field-words.ts';
import { ComparePicture } from './ComparePicture.tsx';
import { CompareTable } from './CompareTable.tsx';
import { useComparison } from './use-comparison.ts';
import './compare.css';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { saidIn } from '../words/said.ts';

/** As many as one comparison takes, the rig on the page included. (The server's own limit is the same.) */
const MAX_COMPARED = 12;

/** A rig that is held against the one on the page. */
export interface OtherRig {
  key: number;
  rig: RigFile;
}

interface ComparePanelProps {
  /** Under which the server holds the route. */
  id: string;
  others: readonly OtherRig[];
  onOthers: (others: readonly OtherRig[]) => void;
}

/** Several rigs on this route: one table, one picture. */
export function ComparePanel({ id, others, onOthers }: ComparePanelProps) {
  const { said, units } = useForm();
  const [unread, setUnread] = useState<readonly string[]>([]);
  const rigs = useMemo(() => [said.rig, ...others.map(({ rig }) => rig)], [said.rig, others]);
  const { comparison, problem } = useComparison(id, rigs, said.trip);
  const room = MAX_COMPARED - 1 - others.length;

  const nextKey = Math.max(0, ...others.map(({ key }) => key)) + 1;
  const add = async (chosen: readonly File[]) => {
    const read = await Promise.allSettled(chosen.slice(0, room).map((file) => openPlan('rig', file, said)));
    const refused = read.flatMap((one) =>
      one.status === 'rejected'
        ? [one.reason instanceof Error ? one.reason.message : String(one.reason)]
        : [],
    );
    const left = chosen
      .slice(room)
      .map(({ name }) => t`${name}: not taken, ${MAX_COMPARED} rigs are the most`);
    setUnread([...refused, ...left]);
    const added = read.flatMap((one, place) =>
      one.status === 'fulfilled' ? [{ key: nextKey + place, rig: one.value.rig }] : [],
    );
    onOthers([...others, ...added]);
  };
  const keep = () => {
    const name = t`${said.rig.name ?? t('unnamed rig')}, kept`.slice(0, 120);
    onOthers([...others, { key: nextKey, rig: { ...said.rig, name } }]);
  };
  return (
    <div className="compare">
      <p>
        {t(
          'The rig on the page against others on this route. Keep it as it is now, then change it; or open rig files.',
        )}
      </p>
      <p className="actions">
        <button type="button" onClick={keep} disabled={room === 0}>
          {t('Keep this rig to compare')}
        </button>
        <FilePick
          multiple
          accept=".yaml,.yml,.json"
          disabled={room === 0}
          onFiles={(files) => void add(files)}
        >
          {t('Open rig files')}
        </FilePick>
      </p>
      {unread.map((text) => (
        <p className="error" role="alert" key={text}>
          {text}
        </p>
      ))}
      {others.length > 0 && (
        <ul className="compared">
          {others.map(({ key, rig }) => (
            <li key={key}>
              <span className="name">{rig.name ?? t('unnamed rig')}</span>
              <button
                type="button"
                className="quiet"
                onClick={() => onOthers(others.filter((other) => other.key !== key))}
              >{tx`Remove${<span className="only-read"> {rig.name ?? t('unnamed rig')}</span>}`}</button>
            </li>
          ))}
        </ul>
      )}
      {problem !== null && (
        <Problem problem={problem} before={t('Not compared; what is shown is the comparison before.')} />
      )}
      {comparison === null ? (
        problem === null && <p className="soft">{t('Comparing…')}</p>
      ) : (
        <>
          <ComparePicture comparison={comparison} units={units} />
          <CompareTable comparison={comparison} units={units} />
          {[...comparison.rigs.filter((rig) => rig.cautions.length > 0)].map((rig) => (
            <section key={rig.name}>
              <h4>{rig.name}</h4>
              <ul>
                {rig.cautions.map((caution) => (
                  <li key={`${caution.code} ${caution.fromKm ?? ''} ${caution.text}`}>
                    {caution.fromKm !== undefined && <b>{formatAtKm(caution.fromKm, units)}: </b>}
                    {withoutPaths(saidIn(units, caution))}
                  </li>
                ))}
              </ul>
            </section>
          ))}
        </>
      )}
    </div>
  );
}
