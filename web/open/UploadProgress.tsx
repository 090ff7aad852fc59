import { useId } from 'react';
import type { UploadStage } from '../api/api.ts';
import { t } from '../language/t.ts';

/** How far the files have come. While they are read nobody knows how long that takes: the bar then has no value. */
export function UploadProgress({ stage }: { stage: UploadStage }) {
  const id = useId();
  const sent = stage.stage === 'sending' ? Math.floor(stage.share * 100) : null;
  return (
    <div className="progress">
      <label htmlFor={id}>{sent === null ? t('Reading…') : t('Sending…')}</label>{' '}
      <span>{sent === null ? t('all sent; being read and reckoned') : t`${sent} % sent`}</span>
      <progress id={id} max={100} {...(sent === null ? {} : { value: sent })} />
    </div>
  );
}
