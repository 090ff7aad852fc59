import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import { StoreState } from '../../contract/kept.ts';
import type { Store } from '../../store/library/store.ts';
import type { AnalysisService } from '../service/analysis-service.ts';

const Health = Type.Object({
  ok: Type.Literal(true),
  reading: Type.Integer({ description: 'Uploads being read or waiting' }),
  analysing: Type.Integer({ description: 'Analyses at work or waiting' }),
  planning: Type.Integer({ description: 'Plans at work or waiting' }),
  kept: Type.Integer({ description: 'Trips in memory for re-analysis' }),
  store: StoreState,
});

export function healthRoutes(service: AnalysisService, store: Store): FastifyPluginAsyncTypebox {
  return async (app) => {
    app.get(
      '/api/health',
      { schema: { summary: 'Whether the server answers, and what it is at', response: { 200: Health } } },
      async () => ({ ok: true as const, ...service.load, store: store.state }),
    );
  };
}
