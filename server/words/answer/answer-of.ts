import type { Answer, Sentence, SentencePart } from '../../contract/analysis.ts';
import type { Commodity } from '../../contract/common.ts';
import type { Part, Parts } from '../parts/part.ts';
import type { AnswerFacts } from './answer-facts.ts';
import { saidOf } from './said-of.ts';
import { todoOf } from './todo-of.ts';

/** The answer in sentences: for each commodity what the longest stretch comes to, then what to do. */
export function answerOf(facts: AnswerFacts): Answer {
  const sentences = (commodity: Commodity) => saidOf(commodity, facts).map(sentenceOf);
  return { fuel: sentences('fuel'), water: sentences('water'), todo: todoOf(facts).map(sentenceOf) };
}

/** Parts in the form that the contract gave sentences of the answer before others had parts. */
const sentenceOf = (all: Parts): Sentence => all.map(sentencePart);

function sentencePart(part: Part): SentencePart {
  if ('place' in part) return { quantity: part.place, unit: 'km', as: 'at' };
  if ('figure' in part) {
    if (part.unit !== 'km' && part.unit !== 'l' && part.unit !== 'days' && part.unit !== 'count') {
      throw new Error(`A sentence of the answer has no figures in ${part.unit}`);
    }
    return { quantity: part.figure, unit: part.unit, as: 'much' };
  }
  if (part.strong === undefined) return part.text;
  return part.verdict === undefined ? { strong: part.text } : { strong: part.text, verdict: part.verdict };
}
