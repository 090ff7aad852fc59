import { setTimeout as timePassed } from 'node:timers/promises';
import { InputProblem } from '../../core/input/problem.ts';
import { type Answer, askOnce, type Interpreter } from './ask.ts';
import { judgeReply, type WholeReply, wordsOfPage } from './judge-reply.ts';

/** Times that one question is put. Ours. */
const TRIES = 5;
/** Waited after each of them where the server does not say how long, seconds. Ours. */
const WAITS_S = [15, 30, 60, 120];
/** A server that asks for a longer wait than this is left alone until the user asks again, seconds. Ours. */
const LONGEST_WAIT_S = 900;

/** Why nothing is asked for a while. */
export interface Waiting {
  seconds: number;
  why: 'busy' | 'broken';
  /** In the server's terms: "status 429". */
  detail: string;
}

export interface Patience {
  signal: AbortSignal;
  onWaiting?: (waiting: Waiting | null) => void;
  /** Lets time pass; given by tests. Rejects when called off. */
  wait?: (ms: number, signal: AbortSignal) => Promise<void>;
}

/** What became of a question: answered, or too much at once for the server or for us. */
export type Given = { outcome: 'whole'; reply: WholeReply } | { outcome: 'too-much'; text: string };

/** Milliseconds pass. */
export const letPass = (ms: number, signal: AbortSignal): Promise<void> =>
  timePassed(ms, undefined, { signal });

/** What stands between a question and its answer for now. */
type Hindrance = { why: Waiting['why']; detail: string; afterS: number | null };

/**
 * Puts one question, and again after a wait where the server is busy or the answer broke off. Throws InputProblem:
 * `overpass-refused` for what waiting does not mend, `overpass-busy` after the last try.
 */
export async function askPatiently(
  interpreter: Interpreter,
  query: string,
  patience: Patience,
): Promise<Given> {
  const { signal, onWaiting, wait = letPass } = patience;
  for (let tries = 1; ; tries += 1) {
    const given = givenOf(await askOnce(interpreter, query, signal), interpreter);
    if ('outcome' in given) return given;
    const { why, detail, afterS } = given;
    const seconds = afterS ?? WAITS_S[tries - 1] ?? LONGEST_WAIT_S;
    if (tries >= TRIES || seconds > LONGEST_WAIT_S) throw stillBusy(interpreter, given, tries);
    onWaiting?.({ seconds, why, detail });
    await wait(seconds * 1_000, signal);
    onWaiting?.(null);
  }
}

function givenOf(answer: Answer, interpreter: Interpreter): Given | Hindrance {
  switch (answer.outcome) {
    case 'busy':
      return { why: 'busy', detail: `status ${answer.status}`, afterS: answer.afterS };
    case 'broken':
      return { why: 'broken', detail: answer.came, afterS: null };
    case 'too-much':
      return { outcome: 'too-much', text: 'more bytes than one answer may have' };
    case 'inner-address':
      throw refusedBy(interpreter, `a name that leads into this machine or its network (${answer.came})`);
    case 'refusal':
      throw refusedBy(interpreter, `status ${answer.status}: ${wordsOfPage(answer.text)}`);
    case 'text':
      return givenOfText(answer.text, interpreter);
  }
}

function givenOfText(text: string, interpreter: Interpreter): Given | Hindrance {
  const judged = judgeReply(text);
  switch (judged.outcome) {
    case 'whole':
      return judged;
    case 'gave-up':
      return { outcome: 'too-much', text: judged.text };
    case 'page':
      throw refusedBy(interpreter, `a web page: ${judged.text}`);
    case 'broken':
      return { why: 'broken', detail: judged.came, afterS: null };
  }
}

/** A refusal in the server's own words. */
export const refusedBy = ({ address }: Interpreter, came: string): InputProblem =>
  new InputProblem({
    code: 'overpass-refused',
    source: address.host,
    came,
    expected: 'map data of the stretch that was asked for',
    remedy:
      'See that DRYSTAGE_OVERPASS names an Overpass interpreter; what was fetched is kept for the next try',
  });

const stillBusy = ({ address }: Interpreter, { detail, afterS }: Hindrance, tries: number): InputProblem =>
  new InputProblem({
    code: 'overpass-busy',
    source: address.host,
    came: `${detail} at try ${tries}${afterS === null ? '' : `, to come again in ${afterS} s`}`,
    expected: 'an answer',
    remedy: 'Ask again later: it goes on where it stopped, what was fetched is kept',
  });
