import type { Verdict } from '../../server/contract/common.ts';
import type { CabAnswer } from '../../server/core/cab/cab-answer.ts';
import type { CabFile } from '../../server/core/cab/cab-file.ts';
import type { CabState } from '../../server/core/cab/cab-state.ts';
import type { BackState, CabSide, SideState } from '../../server/core/cab/side-state.ts';
import { worseOf } from '../../server/core/gaps/verdict.ts';
import { CAB } from '../../server/words/cab.ts';
import { atLeast, atMost, kmBefore, kmToDrive, tenthsAtLeast, wholeKmOf } from './figures.ts';

const WORDS = CAB.answer;

/** One way out, as it is read. */
export interface WayLines {
  readonly head: string;
  readonly verdict: Verdict;
  readonly lines: readonly string[];
}

/** An answer as it is read from the seat. */
export interface AnswerLines {
  readonly answer: CabAnswer;
  readonly head: string;
  readonly todo: readonly string[];
  readonly help: readonly string[];
  /** Null where nothing is read. */
  readonly on: WayLines | null;
  readonly back: WayLines | null;
  readonly rests: readonly string[];
}

type Facts = Pick<CabFile, 'fuelKind' | 'helpHours'> & {
  readonly basis: Pick<CabFile['basis'], 'kind' | 'waterLPerDay'>;
};

/** A state in words; figures rounded to the side that one can rely on. */
export function answerLines(file: Facts, state: CabState, atM: number): AnswerLines {
  const { answer } = state;
  const known = [state.fuel, state.water].filter(isKnown);
  return {
    answer,
    head: WORDS.heads[answer],
    todo: [...known.flatMap((side) => missingLine(file, side)), WORDS.todo[answer]],
    help: answer === 'none' || answer === 'reserve' ? helpLines(file, state) : [],
    on: known.length === 0 ? null : onLines(file, state, atM),
    back: known.length === 0 ? null : backLines(file, known, atM),
    rests: known.length === 0 ? [] : restLines(file, known),
  };
}

const isKnown = (side: CabSide): side is SideState => !('none' in side);

export const nameOf = ({ name }: { readonly name: unknown }): string =>
  typeof name === 'string' ? name : '';

/** What keeps one from going on. */
function missingLine({ fuelKind }: Facts, { commodity, on }: SideState): string[] {
  if (on.verdict === 'enough' || on.verdict === 'unknown') return [];
  return [capitalised(WORDS.missing(WORDS.content(commodity, fuelKind), atMost(-on.marginL)))];
}

const capitalised = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

function helpLines({ helpHours, basis }: Facts, { water }: CabState): string[] {
  return [
    ...('none' in water ? [] : [WORDS.waterLasts(tenthsAtLeast(water.litres / basis.waterLPerDay))]),
    helpHours === null ? WORDS.helpUnknown : WORDS.help(atMost(helpHours)),
    WORDS.neverRation,
  ];
}

function onLines(file: Facts, { fuel, water }: CabState, atM: number): WayLines {
  const sides = [fuel, water];
  const verdict = sides.reduce<Verdict>(
    (worst, side) => worseOf(worst, isKnown(side) ? side.on.verdict : 'unknown'),
    'enough',
  );
  return {
    head: WORDS.onHeads[verdict],
    verdict,
    lines: sides.map((side) =>
      capitalised(isKnown(side) ? onLine(file, side, atM) : unknownLine(file, side)),
    ),
  };
}

function unknownLine({ fuelKind }: Facts, side: Exclude<CabSide, SideState>): string {
  const what = WORDS.content(side.commodity, fuelKind);
  return side.none === 'unread' ? WORDS.unread(what) : WORDS.beyondPlan(what);
}

function onLine(file: Facts, side: SideState, atM: number): string {
  const { on, to, commodity } = side;
  const place = {
    what: WORDS.content(commodity, file.fuelKind),
    name: nameOf(to),
    km: kmToDrive(Math.max(0, to.atM - atM) + to.detourM),
  };
  switch (on.verdict) {
    case 'enough':
      return WORDS.enough(place, atLeast(on.marginL), lasting(file, side));
    case 'into-reserve':
      return WORDS.intoReserve(place, atMost(-on.marginL), atLeast(on.arriveL));
    case 'short':
      return WORDS.short(place, atMost(-on.marginL), on.runsDryM === null ? null : kmBefore(on.runsDryM));
    case 'unknown':
      return WORDS.unknown(place, WORDS.why[on.unknownBy ?? 'no-map']);
  }
}

/** How far, or how long, what is over the reserve goes at the rate of the stretch. */
function lasting({ basis }: Facts, { commodity, on, useLPerM }: SideState): string | null {
  if (commodity === 'water') return WORDS.forDays(tenthsAtLeast(on.marginL / basis.waterLPerDay));
  return useLPerM === null ? null : WORDS.forKm(kmBefore(on.marginL / useLPerM));
}

function backLines(file: Facts, sides: readonly SideState[], atM: number): WayLines {
  const backs = sides.map(({ back }) => back);
  const verdict = backs.reduce<Verdict>((worst, back) => worseOf(worst, back?.verdict ?? 'short'), 'enough');
  return {
    head: backHead(verdict, backs, sides, atM),
    verdict,
    lines: sides.flatMap((side) => backLine(file, side, atM)).map(capitalised),
  };
}

function backHead(
  verdict: Verdict,
  backs: readonly (BackState | null)[],
  sides: readonly SideState[],
  atM: number,
): string {
  if (backs.some((back) => back === null)) return WORDS.noWayBack;
  if (verdict !== 'enough') return WORDS.backHeads[verdict];
  const ends = sides.flatMap(({ back, to }) =>
    back?.untilM == null || back.untilM >= to.atM ? [] : [back.untilM],
  );
  return ends.length === 0 ? WORDS.backHeads.enough : WORDS.backFor(kmBefore(Math.min(...ends) - atM));
}

function backLine(file: Facts, { commodity, back, from, to }: SideState, atM: number): string[] {
  const what = WORDS.content(commodity, file.fuelKind);
  if (back === null) return [WORDS.noBack(what)];
  const place = { what, name: nameOf(from), km: kmToDrive(Math.max(0, atM - from.atM) + from.detourM) };
  switch (back.verdict) {
    case 'enough':
      return [
        WORDS.enough(place, atLeast(back.marginL), null),
        ...(back.untilM === null || back.untilM >= to.atM
          ? []
          : [WORDS.until(kmBefore(back.untilM), nameOf(from))]),
      ];
    case 'into-reserve':
      return [WORDS.intoReserve(place, atMost(-back.marginL), atLeast(back.arriveL))];
    case 'short':
      return [WORDS.short(place, atMost(-back.marginL), null)];
    case 'unknown':
      return [WORDS.unknown(place, WORDS.why[back.unknownBy ?? 'no-map'])];
  }
}

/** What must be so for the answer to hold. */
function restLines({ fuelKind, basis }: Facts, sides: readonly SideState[]): string[] {
  return [
    ...sides.flatMap(({ commodity, to }) =>
      to.kind !== 'passing'
        ? []
        : [
            WORDS.restsOn(
              { what: WORDS.content(commodity, fuelKind), name: nameOf(to), km: wholeKmOf(to.atM) },
              to.evidence === null ? null : WORDS.evidence[to.evidence],
            ),
          ],
    ),
    basis.kind === 'plan' ? WORDS.restsOnPlan : WORDS.restsOnGaps,
    ...(sides.some(({ sharesGrades }) => sharesGrades) ? [WORDS.grades] : []),
  ];
}
