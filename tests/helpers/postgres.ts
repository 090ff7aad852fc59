/** Mark that the reporter looks for in a suite's name: it needs a PostgreSQL, which the run starts (tests/store/postgres/postgres-server.ts). */
export const POSTGRES_MARK = '[PostgreSQL]';
