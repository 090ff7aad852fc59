import type { Answer, Gap, Passing, Report, Sentence } from '../../contract/analysis.ts';
import type { Commodity, Evidence } from '../../contract/common.ts';
import type { FuelKind } from '../../contract/rig.ts';
import { at, commodityWord, edgeName, much, stretchName, strong } from './words.ts';

/** At most this many stretches are named for each commodity in what to do; the rest are counted. */
const NAMED_STRETCHES = 2;

interface AnswerFacts {
  fuel: Report;
  water: Report;
  passings: readonly Passing[];
  fuelKind: FuelKind;
  /** Whether the user said how far the next supply is past the end of the route. */
  onwardTold: boolean;
}

/** The answer in sentences: for each commodity what the longest stretch comes to, then what to do. */
export function answerOf(facts: AnswerFacts): Answer {
  return { fuel: saidOf('fuel', facts), water: saidOf('water', facts), todo: todoOf(facts) };
}

function saidOf(commodity: Commodity, facts: AnswerFacts): Sentence[] {
  const report = facts[commodity];
  const longest = report.gaps[report.longest]!;
  const worst = worstOf(report);
  const sentences: Sentence[] = [
    [`${stretchName(longest)}, `, at(longest.from.atKm), ' to ', at(longest.to.atKm), '.'],
    outcomeOf(longest),
  ];
  const inside = passedOver(commodity, longest, facts.passings);
  if (inside !== null) sentences.push(inside);
  if (worst !== longest && worst.verdict !== 'enough' && worst.verdict !== longest.verdict) {
    sentences.push([
      `Worse: ${stretchName(worst)}, `,
      at(worst.from.atKm),
      ' to ',
      at(worst.to.atKm),
      '. ',
      ...outcomeOf(worst),
    ]);
  }
  return sentences;
}

/** The gap with the worst verdict; among equals the one with the least margin, then the first. */
function worstOf(report: Report): Gap {
  const order = { short: 0, unknown: 1, 'into-reserve': 2, enough: 3 } as const;
  return report.gaps.reduce((worst, gap) => {
    const by = order[gap.verdict] - order[worst.verdict];
    return by < 0 || (by === 0 && tightest(gap).marginL < tightest(worst).marginL) ? gap : worst;
  });
}

/** What runs out first, where water is kept in grades: all of it, or what is fit to drink. */
function tightest(gap: Gap): { arriveL: number; marginL: number; what: string } {
  const drinking = gap.grades?.drinking;
  return drinking !== undefined && drinking.marginL < gap.marginL
    ? { arriveL: drinking.arriveL, marginL: drinking.marginL, what: ' of drinking water' }
    : { arriveL: gap.arriveL, marginL: gap.marginL, what: '' };
}

function outcomeOf(gap: Gap): Sentence {
  const { arriveL, marginL, what } = tightest(gap);
  const noData = gap.acrossNoData ? ' Part of it is without map data and is reckoned as dry.' : '';
  switch (gap.verdict) {
    case 'enough':
      return [
        'Arrives with ',
        much(arriveL, 'l'),
        `${what}, `,
        much(marginL, 'l'),
        ` above the reserve.${noData}`,
      ];
    case 'into-reserve':
      return [
        'Arrives with ',
        much(arriveL, 'l'),
        `${what}: `,
        strong('eats into the reserve by ', 'into-reserve'),
        much(-marginL, 'l'),
        `.${noData}`,
      ];
    case 'short':
      return gap.runsDryKm === null
        ? [strong('Runs dry on the way.', 'short')]
        : [
            strong('Runs dry at ', 'short'),
            at(gap.runsDryKm),
            '. Missing with the reserve: ',
            much(gap.extraL, 'l'),
            '.',
          ];
    case 'unknown':
      return [
        strong('Nobody knows', 'unknown'),
        gap.acrossNoData
          ? ': part of it is without map data, and what is aboard does not reach across.'
          : gap.to.kind === 'end'
            ? ': where the next supply is past the end, or how the road runs, is not told.'
            : ': the route gives straight lines there, not the road.',
      ];
  }
}

/** The strongest-known supply inside a stretch that does not count, and why: the one people would ask about. */
function passedOver(commodity: Commodity, gap: Gap, passings: readonly Passing[]): Sentence | null {
  if (gap.verdict === 'enough') return null;
  const order: Record<Evidence, number> = { confirmed: 0, stated: 1, implied: 2, doubtful: 3 };
  const inside = passings
    .filter(
      (passing) =>
        passing.commodity === commodity &&
        !passing.counts &&
        passing.waterClass !== 'none' &&
        passing.atKm > gap.from.atKm &&
        passing.atKm < gap.to.atKm,
    )
    .sort((a, b) => order[a.evidence] - order[b.evidence] || a.atKm - b.atKm)[0];
  if (inside === undefined) return null;
  const why = inside.reasons[0]?.text ?? 'does not count';
  return [`${inside.name ?? inside.kind} (`, at(inside.atKm), `) does not count: ${lowered(why)}`, '.'];
}

const lowered = (text: string): string =>
  text.replace(/\.$/, '').replace(/^[A-Z](?=[a-z ])/, (letter) => letter.toLowerCase());

function todoOf(facts: AnswerFacts): Sentence[] {
  const carries = (['fuel', 'water'] as const).flatMap((commodity) => carryOf(commodity, facts));
  const asks = (['fuel', 'water'] as const).flatMap((commodity) => askOf(commodity, facts));
  if (!facts.onwardTold) asks.push(['Say how far it is from the end of the route to the next supply.']);
  const close: Sentence = [
    carries.length + asks.length === 0
      ? 'Leave with everything full: every stretch holds with the reserve. Confirm each supply before you leave.'
      : 'Leave with everything full. Confirm each supply before you leave.',
  ];
  return [...carries, ...asks, close];
}

/** One sentence for a commodity: how many cans over which stretches. */
function carryOf(commodity: Commodity, facts: AnswerFacts): Sentence[] {
  const report = facts[commodity];
  const lacking = report.gaps
    .filter((gap) => gap.extraCans > 0 && (gap.verdict === 'short' || gap.verdict === 'into-reserve'))
    .sort((a, b) => b.extraL - a.extraL);
  if (lacking.length === 0) return [];
  const sentence: Sentence = [`${capital(commodityWord(commodity, facts.fuelKind))}: `];
  for (const [index, gap] of lacking.slice(0, NAMED_STRETCHES).entries()) {
    const cans = `${gap.extraCans} ${gap.extraCans === 1 ? 'can' : 'cans'}`;
    const toGet = gap.extraCans - report.cansOwned;
    sentence.push(
      index === 0 ? '' : ', ',
      strong(cans),
      ...(index === 0 ? [' of ', much(report.canL, 'l')] : []),
      ` from ${edgeName(gap.from)} (`,
      at(gap.from.atKm),
      `) to ${edgeName(gap.to)} (`,
      at(gap.to.atKm),
      toGet > 0 ? `), ${toGet} more than you own` : ')',
    );
  }
  const rest = lacking.length - NAMED_STRETCHES;
  sentence.push(
    rest > 0 ? `, and on ${rest} more ${rest === 1 ? 'stretch' : 'stretches'} (see the gaps).` : '.',
  );
  return [sentence.filter((part) => part !== '')];
}

/** One sentence for a commodity: where nobody knows, save what only the way past the end leaves open. */
function askOf(commodity: Commodity, facts: AnswerFacts): Sentence[] {
  const unknown = facts[commodity].gaps.filter(
    (gap) => gap.verdict === 'unknown' && (gap.acrossNoData || gap.to.kind !== 'end' || facts.onwardTold),
  );
  const [first] = unknown;
  if (first === undefined) return [];
  const rest = unknown.length - 1;
  return [
    [
      `Find out where there is ${commodityWord(commodity, facts.fuelKind)} between `,
      at(first.from.atKm),
      ' and ',
      at(first.to.atKm),
      rest > 0 ? `, and on ${rest} more ${rest === 1 ? 'stretch' : 'stretches'}.` : '.',
    ],
  ];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
