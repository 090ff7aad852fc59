import type { FastifyInstance, RouteOptions } from 'fastify';

/** Methods whose requests may carry a body. */
const WITH_BODY = ['POST', 'PUT', 'PATCH'];

/**
 * Lets no route start that takes what no schema describes: a type without a schema is a wish. Files that plugins serve
 * (hidden from the API document) take nothing but their address.
 */
export function requireSchemas(app: FastifyInstance): void {
  app.addHook('onRoute', (route) => {
    const missing = missingSchema(route);
    if (missing === null) return;
    throw new Error(`${route.method} ${route.url} takes ${missing} without a schema: give its route one`);
  });
}

function missingSchema({ method, url, schema }: RouteOptions): string | null {
  if (schema === undefined) return 'requests';
  if ([method].flat().some((one) => WITH_BODY.includes(one)) && schema.body === undefined) return 'a body';
  const hidden = 'hide' in schema && schema.hide === true;
  return !hidden && /[:*]/.test(url) && schema.params === undefined ? 'params' : null;
}
