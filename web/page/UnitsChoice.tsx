import { useState } from 'react';
import { UNIT_CHOICES } from '../../server/words/parts/reader-units.ts';
import { SelectRow } from '../form/FormRow.tsx';
import { Dialog } from '../kit/Dialog.tsx';
import { t } from '../language/t.ts';
import { UNIT_KINDS, withUnit } from '../units/choice.ts';
import { UNIT_PRESETS, type UnitPreset, type Units, unitsOf } from '../units/conversions.ts';
import type { UnitSystem } from '../units/units.ts';

interface UnitsChoiceProps {
  units: UnitSystem;
  onUnits: (units: UnitSystem) => void;
}

const KIND_WORDS: Record<keyof Units, string> = {
  distance: t('Distances'),
  volume: t('Fuel and water'),
  mass: t('Masses'),
  temperature: t('Temperatures'),
  length: t('Heights and measures'),
  pressure: t('Pressures'),
};
const PRESET_NAMES = Object.keys(UNIT_PRESETS) as UnitPreset[];
/** Values of the list beside the systems: the reader's own choice, and the way to it. */
const OWN = 'own';
const EACH = 'each';

const inShort = (units: UnitSystem): string => {
  const { distance, volume } = unitsOf(units);
  return `${distance}, ${volume}`;
};

/** The reader's units: one of three systems, or each on its own. */
export function UnitsChoice({ units, onUnits }: UnitsChoiceProps) {
  const [isOpen, setOpen] = useState(false);
  const choose = (value: string) => {
    const preset = PRESET_NAMES.find((name) => name === value);
    if (preset !== undefined) onUnits(preset);
    else if (value === EACH) setOpen(true);
  };
  return (
    <>
      <select
        aria-label={t('Units')}
        value={typeof units === 'string' ? units : OWN}
        onChange={({ target }) => choose(target.value)}
      >
        {PRESET_NAMES.map((name) => (
          <option key={name} value={name}>
            {inShort(name)}
          </option>
        ))}
        {typeof units !== 'string' && <option value={OWN}>{`${inShort(units)} …`}</option>}
        <option value={EACH}>{t('each on its own')}</option>
      </select>
      {isOpen && (
        <Dialog title={t('Units')} mayClose onClose={() => setOpen(false)}>
          {UNIT_KINDS.map((kind) => (
            <SelectRow
              key={kind}
              label={KIND_WORDS[kind]}
              value={unitsOf(units)[kind]}
              choices={UNIT_CHOICES[kind].map((unit) => ({ value: unit, words: unit }))}
              onChoose={(unit) => onUnits(withUnit(units, kind, unit))}
            />
          ))}
          <p>
            <button type="button" className="main" onClick={() => setOpen(false)}>
              {t('Done')}
            </button>
          </p>
        </Dialog>
      )}
    </>
  );
}
