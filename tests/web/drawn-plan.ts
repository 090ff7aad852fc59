import type { PlanLevel } from '../../server/contract/plan.ts';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { samplePlan } from './sample-plan.ts';

const level = (atKm: number, tankL: number, cansL: number[], more: Partial<PlanLevel> = {}): PlanLevel => ({
  atKm,
  tankL,
  cansL,
  totalL: cansL.reduce((sum, each) => sum + each, tankL),
  ...more,
});

/** The small plan with levels to draw: two cans filled at km 300, poured at km 570 and 640; water in two grades. */
export function drawnPlan(): PlanReply {
  const reply = samplePlan();
  reply.plan.levels = {
    fuel: [
      level(0, 100, []),
      level(300, 40, []),
      level(300, 100, [20, 20]),
      level(570, 80, [20, 20]),
      level(570, 100, [0, 20]),
      level(640, 80, [0, 20]),
      level(640, 100, [0, 0]),
      level(1200, 28, [0, 0]),
    ],
    water: [
      level(0, 70, [], { drinkableL: 50, washingL: 20 }),
      level(1200, 25, [], { drinkableL: 15, washingL: 10 }),
    ],
  };
  reply.whatIf.turnBacks.push({ ...reply.whatIf.turnBacks[0]!, atKm: 700, commodity: 'water', first: false });
  return reply;
}
