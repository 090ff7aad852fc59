import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, expect } from 'vitest';
import type { AnalysisReply } from '../../../server/contract/answers/map.ts';
import { buildApp } from '../../../server/http/app.ts';
import { PLAN_SECONDS } from '../../helpers/patience.ts';

/** The app on a day, and what it says of the demo; both there once tests run. It must meet no fault. */
export function demoApp(day: string): { readonly app: FastifyInstance; readonly demo: AnalysisReply } {
  const faults: string[] = [];
  let running: { app: FastifyInstance; demo: AnalysisReply } | null = null;
  beforeAll(async () => {
    const app = await buildApp({
      today: () => day,
      webFolder: '/nowhere',
      limits: { planSeconds: PLAN_SECONDS },
      onFault: (text) => faults.push(text),
    });
    running = { app, demo: (await app.inject('/api/demo')).json<AnalysisReply>() };
  });
  afterAll(async () => {
    await running?.app.close();
    expect(faults).toEqual([]);
  });
  const there = () => {
    if (running === null) throw new Error('asked before the tests run');
    return running;
  };
  return {
    get app() {
      return there().app;
    },
    get demo() {
      return there().demo;
    },
  };
}
