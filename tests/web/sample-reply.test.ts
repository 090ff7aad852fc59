import { Value } from 'typebox/value';
import { expect, test } from 'vitest';
import { AnalysisReply } from '../../server/contract/answers/map.ts';
import { sampleReply } from './sample-reply.ts';

test('the sample reply is what the contract asks for', () => {
  expect([...Value.Errors(AnalysisReply, sampleReply())]).toEqual([]);
});

test('the sample reply has a gap of every verdict', () => {
  const { fuel, water } = sampleReply().analysis;
  const verdicts = new Set([...fuel.gaps, ...water.gaps].map((gap) => gap.verdict));
  expect([...verdicts].sort()).toEqual(['enough', 'into-reserve', 'short', 'unknown']);
});
