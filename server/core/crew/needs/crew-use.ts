import type { Crew, Person, WaterGrade, WaterUse, WaterUseName } from '../../../contract/crew.ts';
import type { Term } from '../../quantity/term.ts';
import type { UseRange } from '../../quantity/use-range.ts';
import { heatOf } from './heat.ts';
import { DEFAULT_LEVEL, LEVELS, type PersonUse, TEETH_AND_HANDS_L } from './levels.ts';
import { petLitresPerDay, petSource } from './pets.ts';
import { atEnds, HIGH_OF_ONE_NUMBER, NOTHING, plus, rangeOf, sumOf, times } from './range.ts';

export type UseRow = WaterUse['uses'][number];

/** What a crew uses, litres a day. */
export interface CrewUse {
  from: 'crew' | 'observed';
  uses: UseRow[];
  /** Washing water taken where it is used; not in `uses`. */
  notCarried: UseRange;
  total: UseRange;
  drinking: UseRange;
  washing: UseRange;
  heat: WaterUse['heat'];
  /** What the heat makes of everybody's drinking at the high end, where it is told and nothing was observed. */
  heatTerms: Term[];
  /** Drinking grade by the parts, whatever was observed. */
  expectedDrinking: UseRange;
  /** What people drink in the heat expected by the reckoning, whatever was observed: litres a day of the thirstiest. */
  drinkingOfOne: UseRange;
}

const OWN = 'your own figure';

/**
 * What the crew takes from the tanks in a day: each person's uses by level or own figures, drinking raised by heat and
 * work, pets by body mass, the vehicle, losses. An observed figure of the user's (litres a day of all aboard) wins:
 * drinking grade keeps what the heat asks for, washing takes what is left; what was observed above the sum raises all
 * alike. The parts add up to the total at each end.
 */
export function crewUse(crew: Crew, observed: UseRange | null): CrewUse {
  const heat = heatOf(crew.heat);
  const people = crew.people.map((person) => personUses(person, heat));
  const count = (index: number) => crew.people[index]!.count ?? 1;
  const everybody = (use: PersonUse | 'hands'): UseRange =>
    sumOf(people.map((uses, index) => times(uses[use], count(index))));
  const pets = (crew.pets ?? []).map((pet) =>
    times(
      pet.litresPerDay === undefined ? petLitresPerDay(pet.kg) : rangeOf(pet.litresPerDay),
      heat?.restFactor ?? 1,
    ),
  );
  const said = sourceOfPeople(crew);
  const row = (use: WaterUseName, grade: WaterGrade, litresPerDay: UseRange, source: string): UseRow => ({
    use,
    grade,
    litresPerDay,
    source,
  });
  const washing = [
    row('washing', 'washing', everybody('washing'), said),
    row('shower', 'washing', everybody('shower'), said),
  ];
  const atSource = crew.washingAtSource ?? false;
  const vehicleL = crew.vehicleLitresPerDay ?? 0;
  const parts = [
    row('drinking', 'drinking', everybody('drinking'), said),
    row('cooking', 'drinking', everybody('cooking'), said),
    row('washing-up', 'drinking', everybody('washingUp'), said),
    row(
      'teeth-and-hands',
      'drinking',
      everybody('hands'),
      `the first ${TEETH_AND_HANDS_L} l of washing (ours)`,
    ),
    row('pets', 'drinking', sumOf(pets), petsSource(crew)),
    ...(atSource ? [] : washing),
    row('vehicle', 'washing', rangeOfOne(vehicleL), OWN),
  ].filter(({ litresPerDay }) => litresPerDay.high > 0);
  const uses = observed === null ? withLosses(parts, crew.lossPercent ?? 0) : splitOf(observed, parts);
  const ofGrade = (grade: WaterGrade) =>
    sumOf(uses.filter((one) => one.grade === grade).map((one) => one.litresPerDay));
  const drinking = ofGrade('drinking');
  const washingGrade = ofGrade('washing');
  return {
    from: observed === null ? 'crew' : 'observed',
    uses,
    notCarried: atSource ? sumOf(washing.map((one) => one.litresPerDay)) : NOTHING,
    total: observed ?? plus(drinking, washingGrade),
    drinking,
    washing: washingGrade,
    heat,
    heatTerms: heat === null || observed !== null ? [] : heatTermsOf(crew, heat),
    expectedDrinking: sumOf(parts.filter((one) => one.grade === 'drinking').map((one) => one.litresPerDay)),
    drinkingOfOne: atEnds((end) => Math.max(...people.map((uses) => uses.drinking[end]))),
  };
}

const rangeOfOne = (value: number): UseRange => ({ low: value, typical: value, high: value });

/** One person's uses in the heat expected; `washing` without what is for teeth, hands and wounds. */
function personUses(person: Person, heat: WaterUse['heat']): Record<PersonUse | 'hands', UseRange> {
  const level = LEVELS[person.level ?? DEFAULT_LEVEL].uses;
  const told = (use: PersonUse): UseRange => {
    const own = person[use];
    return own === undefined ? level[use] : rangeOf(own);
  };
  const washing = told('washing');
  const hands = atEnds((end) => Math.min(washing[end], TEETH_AND_HANDS_L));
  const atRest = times(told('drinking'), heat?.restFactor ?? 1);
  const working = times(heat?.litresPerWorkHour ?? NOTHING, heat?.workHoursPerDay ?? 0);
  return {
    drinking: plus(atRest, working),
    cooking: told('cooking'),
    washingUp: told('washingUp'),
    hands,
    washing: atEnds((end) => washing[end] - hands[end]),
    shower: told('shower'),
  };
}

/** The high end of all people's drinking in three terms: mild weather, heat at rest, work. */
function heatTermsOf(crew: Crew, heat: NonNullable<WaterUse['heat']>): Term[] {
  const heads = crew.people.reduce((sum, person) => sum + (person.count ?? 1), 0);
  const mildL = crew.people.reduce((sum, person) => {
    const { high } =
      person.drinking === undefined
        ? LEVELS[person.level ?? DEFAULT_LEVEL].uses.drinking
        : rangeOf(person.drinking);
    return sum + high * (person.count ?? 1);
  }, 0);
  const perHourL = heat.litresPerWorkHour.high;
  const unit = 'l a day';
  return [
    { label: 'drinking in mild weather at rest', value: mildL, unit },
    {
      label: `drinking at rest × ${heat.restFactor.toFixed(2)} for WBGT ${heat.wbgtC.toFixed(1)} °C`,
      value: mildL * (heat.restFactor - 1),
      unit,
    },
    {
      label: `${heat.workHoursPerDay} h of ${heat.work} work at ${perHourL.toFixed(2)} l an hour and person, ${heads} people`,
      value: heat.workHoursPerDay * perHourL * heads,
      unit,
    },
  ];
}

/** Losses are a share of what is drawn, in each grade. */
function withLosses(parts: UseRow[], lossPercent: number): UseRow[] {
  if (lossPercent === 0) return parts;
  const factor = lossPercent / (100 - lossPercent);
  const lost = (['drinking', 'washing'] as const).map((grade): UseRow => {
    const used = sumOf(parts.filter((one) => one.grade === grade).map((one) => one.litresPerDay));
    return { use: 'losses', grade, litresPerDay: times(used, factor), source: OWN };
  });
  return [...parts, ...lost.filter(({ litresPerDay }) => litresPerDay.high > 0)];
}

/** An observed total laid over the parts, end by end: drinking grade first. */
function splitOf(observed: UseRange, parts: readonly UseRow[]): UseRow[] {
  const factors = (end: keyof UseRange): Record<WaterGrade, number> => {
    const sum = (grade: WaterGrade) =>
      parts.filter((one) => one.grade === grade).reduce((total, one) => total + one.litresPerDay[end], 0);
    const drinking = sum('drinking');
    const washing = sum('washing');
    const total = observed[end];
    if (total <= drinking) return { drinking: total / drinking, washing: 0 };
    if (total <= drinking + washing || washing === 0)
      return washing === 0
        ? { drinking: total / drinking, washing: 0 }
        : { drinking: 1, washing: (total - drinking) / washing };
    return { drinking: total / (drinking + washing), washing: total / (drinking + washing) };
  };
  const by = { low: factors('low'), typical: factors('typical'), high: factors('high') };
  return parts.map((one) => ({
    ...one,
    litresPerDay: atEnds((end) => one.litresPerDay[end] * by[end][one.grade]),
    source: `${OWN} for all aboard, split as the crew's parts (${one.source})`,
  }));
}

function sourceOfPeople(crew: Crew): string {
  const levels = new Set(crew.people.map((person) => person.level ?? DEFAULT_LEVEL));
  const own = crew.people.some((person) =>
    (['drinking', 'cooking', 'washingUp', 'washing', 'shower'] as const).some(
      (use) => person[use] !== undefined,
    ),
  );
  const named = [...levels].map((level) => `"${level}": ${LEVELS[level].source}`).join('; ');
  return own ? `${OWN} where told (high end ${HIGH_OF_ONE_NUMBER} × one number, ours), else ${named}` : named;
}

const petsSource = (crew: Crew): string =>
  [
    ...new Set((crew.pets ?? []).map((pet) => (pet.litresPerDay === undefined ? petSource(pet.kind) : OWN))),
  ].join('; ') + (crew.heat === undefined ? '' : '; raised by heat as people at rest (ours)');
