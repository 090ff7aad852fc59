import { existsSync } from 'node:fs';
import { expect, it } from 'vitest';
import { ASSETS, CODE_BUDGET_KB, pageSizesKb } from '../helpers/page-sizes.ts';

// "npm test" builds the page first; without a build there is nothing to weigh.
it.skipIf(!existsSync(ASSETS))(
  `the built page has less than ${CODE_BUDGET_KB} kB of gzipped code`,
  { tags: ['slow'] },
  async () => {
    const { scripts, styles } = await pageSizesKb();
    expect(scripts).toBeGreaterThan(300);
    expect(styles).toBeGreaterThan(5);
    expect(scripts + styles).toBeLessThan(CODE_BUDGET_KB);
  },
);
