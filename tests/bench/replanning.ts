// How soon a re-plan answers: the first open brew slips a week, and the plan in force is mended by the planner's own default budget.
import { NO_FACTS, type Plan, plan, replan } from '../../planner/index.ts';
import { GENERATED_TODAY, generatedSeason, nameOf, shapeOf } from './generated.ts';
import { cpuSeconds, type Row } from './measure.ts';
import { middle } from './timed.ts';

const SIZES = [
  { brews: 60, targetSeconds: 1, firstSteps: 60_000 },
  { brews: 250, targetSeconds: 5, firstSteps: 60_000 },
] as const;
const WEEK_MS = 7 * 86_400_000;

/** The brew slips a week, told on the day on which it was to be brewed. */
function slipped(inForce: Plan, at: number) {
  const brew = inForce.brews[at];
  if (brew === undefined) throw new Error('the plan has too few brews');
  const day = new Date(Date.parse(`${brew.day}T00:00:00Z`) + WEEK_MS).toISOString().slice(0, 10);
  return { ...NO_FACTS, notBefore: [{ brew: brew.brew, day }] };
}

export function replanRows(quick: boolean): Row[] {
  return SIZES.slice(0, quick ? 1 : SIZES.length).flatMap(
    ({ brews, targetSeconds, firstSteps }) => {
      const shape = shapeOf(brews, 0);
      const house = generatedSeason(shape);
      const today = GENERATED_TODAY;
      const inForce = plan({ house, today, steps: firstSteps });
      const runs = [0, Math.floor(brews / 3), Math.floor(brews / 2)].map((at) =>
        cpuSeconds(() => replan({ house, today, facts: slipped(inForce, at), inForce })),
      );
      const seconds = runs.map((run) => run.seconds);
      const note = `three slips, ${runs[0]?.result.plan.steps ?? 0} plans judged at most`;
      const row = (what: string, value: number, target: number | null): Row => ({
        what: `${nameOf(shape)}: a re-plan answers in, ${what}`,
        value,
        unit: 's',
        target,
        better: 'less',
        note,
      });
      return [
        row('middle', middle(seconds), targetSeconds),
        row('worst', Math.max(...seconds), null),
      ];
    },
  );
}
