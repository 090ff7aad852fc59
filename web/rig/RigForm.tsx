import { type RefObject, useContext, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { Fields } from '../form/Fields.tsx';
import { FindFields, Searched } from '../form/FindFields.tsx';
import { FindContext } from '../form/find.ts';
import { RIG, useForm } from '../form/form-context.ts';
import { text } from '../form/items.ts';
import { isPhone } from '../kit/is-phone.ts';
import { SideView } from '../side-view/SideView.tsx';
import { asGroup, RIG_SECTIONS, type RigSection } from './sections.ts';
import './rig.css';
import { t } from '../language/t.ts';

const NAME = text(t('Name of the rig'), '/name');
const ALL = [NAME, ...RIG_SECTIONS.map(asGroup)];

/** Every quantity of the rig, part by part; an index of them and a search lead to each. */
export function RigForm() {
  const { said } = useForm();
  // Only how they stand at first: afterwards the reader opens and closes them. All of it would be twenty screens of a phone.
  const [open, setOpen] = useState<ReadonlySet<string>>(
    () => new Set(RIG_SECTIONS.filter(({ told }) => !isPhone() && told(said.rig)).map(({ id }) => id)),
  );
  const toggle = (id: string, isOpen: boolean) =>
    setOpen((last) => new Set(isOpen ? [...last, id] : [...last].filter((each) => each !== id)));
  const parts = useRef<HTMLDivElement>(null);
  const index = (show: () => void) => (
    <RigIndex
      parts={parts}
      onGo={(id) => {
        show();
        toggle(id, true);
      }}
    />
  );
  return (
    <FindFields label={t('Find a field of the rig')} items={ALL} index={index}>
      <Fields items={[NAME]} at={RIG} />
      <div className="rig-body">
        <Picture />
        <div ref={parts}>
          {RIG_SECTIONS.map((section) => (
            <Section
              key={section.id}
              section={section}
              isOpen={open.has(section.id)}
              onToggle={(isOpen) => toggle(section.id, isOpen)}
            />
          ))}
        </div>
      </div>
    </FindFields>
  );
}

/** The rig as it stands; out of the way while a field is looked for. */
function Picture() {
  const { analysis, units } = useForm();
  return useContext(FindContext) === null ? <SideView {...{ analysis, units }} /> : null;
}

/** The parts by name: one click opens one and goes there. */
function RigIndex({ parts, onGo }: { parts: RefObject<HTMLDivElement | null>; onGo: (id: string) => void }) {
  const go = (id: string) => {
    // It must be there, and open, before one can go there.
    flushSync(() => onGo(id));
    const part = parts.current?.querySelector(`[data-part="${id}"]`);
    part?.querySelector('summary')?.focus({ preventScroll: true });
    part?.scrollIntoView({ block: 'start' });
  };
  return (
    <nav aria-label={t('Parts of the rig')}>
      {RIG_SECTIONS.map(({ id, title }) => (
        <button key={id} type="button" className="quiet" onClick={() => go(id)}>
          {title}
        </button>
      ))}
    </nav>
  );
}

interface SectionProps {
  section: RigSection;
  isOpen: boolean;
  onToggle: (isOpen: boolean) => void;
}

function Section({ section, isOpen, onToggle }: SectionProps) {
  const { analysis, units } = useForm();
  const { id, title, says, summary, items } = section;
  return (
    <Searched item={asGroup(section)}>
      {(unfolded) => (
        <details
          className="rig-section"
          data-part={id}
          open={unfolded || isOpen}
          onToggle={({ target, currentTarget }) => {
            // While fields are looked for the parts open and close by themselves.
            if (target === currentTarget && !unfolded) onToggle(currentTarget.open);
          }}
        >
          <summary>
            <h4>{title}</h4> <span className="soft">{summary(analysis.rig, units)}</span>
          </summary>
          {(unfolded || isOpen) && (
            <>
              <p className="says">{says}</p>
              <Fields items={items} at={RIG} />
            </>
          )}
        </details>
      )}
    </Searched>
  );
}
