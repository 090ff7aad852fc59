import { useForm } from '../form/form-context.ts';
import { t } from '../language/t.ts';
import { FilePart } from './FilePart.tsx';
import { KeptRigs } from './KeptRigs.tsx';
import { RigForm } from './RigForm.tsx';

/** The rig: what it holds, uses and weighs. */
export function RigPanel() {
  const { said } = useForm();
  return (
    <FilePart kind="rig" title={t('Rig')}>
      {(replace) => (
        <>
          <KeptRigs rig={said.rig} onTake={replace} />
          <RigForm />
        </>
      )}
    </FilePart>
  );
}
