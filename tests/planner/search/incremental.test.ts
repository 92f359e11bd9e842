// The shortcut and the truth: after every move the partial unfolding and judging equal those of the whole plan.
import { describe, expect, it } from 'vitest';
import { readFolder } from '../../../api/folder/index.ts';
import { defaultToday, type House, NO_FACTS } from '../../../planner/index.ts';
import { hardFindings, weigh } from '../../../planner/report/weighing.ts';
import { construct, onlyFacts } from '../../../planner/search/construct.ts';
import { MOVES } from '../../../planner/search/moves/index.ts';
import { ruinAndRecreate } from '../../../planner/search/moves/ruin.ts';
import { Random } from '../../../planner/search/random.ts';
import { Judge } from '../../../planner/search/score.ts';
import { compile } from '../../../planner/timeline/problem.ts';
import { copyDecisions, Timeline } from '../../../planner/timeline/timeline.ts';
import { unfold } from '../../../planner/timeline/unfold.ts';

async function season(name: string): Promise<House> {
  const folder = new URL(`../../seasons/${name}`, import.meta.url).pathname;
  const { house } = await readFolder(folder);
  if (!house) throw new Error(`${name} cannot be read`);
  return house;
}

/** What each rule says, so that a difference names the rule. */
function byRule(judge: Judge, t: Timeline): Record<string, number> {
  const { hard, cost } = weigh(judge, t);
  return Object.fromEntries([...hard, ...cost]);
}

describe.each(['lantern-shed', 'quay-seven'])('%s', (name) => {
  it('judges every plan it stands on as a judging from nothing does', async () => {
    const house = await season(name);
    // rules relaxed and weights changed, so that nothing hides behind a default
    const bent: House = {
      ...house,
      relaxed: ['gravity-ceiling', 'storage-limit'],
      weights: { lateness: 2 },
      rules: { ...house.rules, slackDays: 5, reserve: 1, keptStarterJars: 2 },
    };
    const problem = compile(bent, defaultToday(bent), NO_FACTS, [], null);
    const judge = new Judge(problem);
    const random = new Random(7);
    const desk = construct(problem, judge, random, { slurry: true }, onlyFacts(problem), {
      slots: 4,
      judged: 2,
    });
    const truth = new Timeline(problem);
    let kept = 0;
    for (let i = 0; i < 2500; i++) {
      let changed = false;
      if (i % 100 === 99) changed = ruinAndRecreate(desk, 4, (c, s) => c.hard <= s.hard);
      else {
        const move = MOVES[random.below(MOVES.length)];
        const t = desk.begin();
        if (move?.apply(desk, t))
          changed = desk.settle((c, s) => c.hard <= s.hard && random.next() < 0.7);
      }
      if (!changed) continue;
      kept++;
      copyDecisions(desk.current, truth);
      unfold(truth);
      const whole = judge.score(truth);
      if (JSON.stringify(whole) !== JSON.stringify(desk.score)) {
        expect(byRule(judge, desk.current), `after move ${i}`).toEqual(byRule(judge, truth));
        expect(hardFindings(judge, desk.current).length).toBe(hardFindings(judge, truth).length);
      }
      expect(desk.score, `after move ${i}`).toEqual(whole);
    }
    expect(kept).toBeGreaterThan(300);
  });
});
