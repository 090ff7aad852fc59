import { type FormEvent, useEffect, useId, useState } from 'react';
import { detailsOf, type ProblemDetails, request } from '../api/api.ts';
import { json } from '../api/kept.ts';
import { onSignedOut } from '../api/signed-out.ts';
import { Dialog } from '../kit/Dialog.tsx';
import { t } from '../language/t.ts';

/** Asks for the secret of a shared server once it answers that nobody is signed in. */
export function SignIn() {
  const id = useId();
  const [isAsked, setAsked] = useState(false);
  const [isSent, setSent] = useState(false);
  const [problem, setProblem] = useState<ProblemDetails | null>(null);
  useEffect(() => onSignedOut(() => setAsked(true)), []);
  if (!isAsked) return null;
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const secret = String(new FormData(event.currentTarget).get('secret') ?? '');
    setSent(true);
    try {
      await request('/api/session', json('POST', { secret }));
      // What the page asked for meanwhile was refused: it asks again.
      location.reload();
    } catch (error) {
      setProblem(detailsOf(error));
      setSent(false);
    }
  };
  return (
    <Dialog title={t('Sign in')} mayClose={false} onClose={() => {}}>
      <form onSubmit={submit}>
        <p>{t('This server is shared. Whoever runs it has given you a secret.')}</p>
        <label htmlFor={id}>{t('Secret')}</label>{' '}
        <input id={id} name="secret" type="password" autoComplete="current-password" required />{' '}
        <button type="submit" disabled={isSent}>
          {t('Sign in')}
        </button>
        {problem !== null && (
          <p role="alert">
            {problem.detail} {problem.remedy}
          </p>
        )}
      </form>
    </Dialog>
  );
}
