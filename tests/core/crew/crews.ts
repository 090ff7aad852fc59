import type { Crew, Person, WaterUse } from '../../../server/contract/crew.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { CrewUse } from '../../../server/core/crew/needs/crew-use.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';

/** The example rig with a crew in place of its litres a day. */
export function rigOf(crew: Crew, water: Partial<RigFile['water']> = {}): RigFile {
  const { litresPerDay: _litresPerDay, ...rest } = EXAMPLE_RIG.water;
  return { ...EXAMPLE_RIG, water: { ...rest, ...water }, crew };
}

/** What the crew of a rig uses, as every result reckons it. */
export function crewUseOf(crew: Crew, water: Partial<RigFile['water']> = {}): CrewUse {
  const { crew: settled } = settleRig(rigOf(crew, water)).rig;
  if (settled === null) throw new Error('a rig with a crew has none when settled');
  return settled.use;
}

export const onePerson = (person: Person, rest: Partial<Crew> = {}): Crew => ({ people: [person], ...rest });

/** Litres a day of one use; 0 where it is not used. */
export function litresOf(use: CrewUse, name: WaterUse['uses'][number]['use']): WaterUse['litresPerDay'] {
  const nothing = { low: 0, typical: 0, high: 0 };
  return use.uses.find((one) => one.use === name)?.litresPerDay ?? nothing;
}
