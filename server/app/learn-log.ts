import type { LogResult } from '../contract/answers/log.ts';
import type { Outcome } from '../core/input/problem.ts';
import { type LearnOptions, learnFromLog } from '../core/log/learn.ts';
import { logFaultWords } from '../words/words-of.ts';
import { lessonYaml } from './rates-yaml.ts';
import { toContract } from './to-contract.ts';

/** What a log (CSV as text) teaches, in words. `source` names it in the result and in a refusal, whose place is the line. */
export function learnLog(text: string, source: string, options: LearnOptions): Outcome<LogResult> {
  const outcome = learnFromLog(text, options);
  if (!outcome.ok) {
    return { ok: false, problem: { code: 'log-invalid', source, ...logFaultWords(outcome.fault) } };
  }
  const lesson = outcome.value;
  return { ok: true, value: { ...toContract(lesson), source, yaml: lessonYaml(lesson) } };
}
