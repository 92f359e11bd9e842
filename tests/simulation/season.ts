// A whole season, day by day over the real API: what is due is done or goes wrong, each draft is adopted, the feed is polled.

import type { z } from 'zod';
import type { DraftAnswer, PlanAnswer, TasksAnswer } from '../../api/routes/shapes.ts';
import type { House, News, Plan } from '../../planner/index.ts';
import { openApp } from '../builders/app.ts';
import { Facts } from './facts.ts';
import { descendants, touchedBySlip } from './kin.ts';
import { brewOf, Subscriber } from './subscriber.ts';
import { type Chance, Truth } from './truth.ts';

type Given = z.input<typeof News>;
type Due = z.output<typeof TasksAnswer>['tasks'][number];

export type Told = {
  day: string;
  kind: News['kind'];
  /** Entries added, gone or changed by it and by the draft that was adopted for it. */
  entries: number;
  /** Of these, the ones that came, went or stand at another time; the others say something else. */
  shifted: number;
  /** Of a slip: entries of the brew, its tank and its descendants; and those changed elsewhere. */
  expected: number | null;
  elsewhere: number | null;
  replanned: boolean;
  seconds: number;
};
export type Season = {
  days: number;
  polls: number;
  told: Told[];
  /** What may never be, and was. */
  violations: string[];
  /** News that the record would not take, by its code. */
  refused: string[];
  returned: number;
  brewed: number;
  suspectHadDescendants: number;
};

export type SeasonOptions = {
  house: House;
  from: string;
  seed: number;
  /** How often things go wrong, where a short season is to see enough of it. */
  chance?: Chance;
  workerUrl: URL;
  /** Plans judged for the first plan and for each re-plan; null: the planner's own default. */
  firstSteps: number | null;
  steps: number | null;
  progress?: (line: string) => void;
};

const next = (day: string, days = 1): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
const between = (from: string, to: string): number =>
  (Date.parse(to) - Date.parse(from)) / 86_400_000;

/** The season is a little past its half when a culture goes bad. */
const BAD_FROM = 0.4;
/** Days after the last brew day in which beers are still emptied. */
const TAIL_DAYS = 45;
/** A task that the record will not take is asked once a day; this many tasks of a day are more than there are. */
const MOST_A_DAY = 400;

export async function liveSeason(options: SeasonOptions): Promise<Season> {
  const { house, from, workerUrl, steps } = options;
  const open = await openApp({ house, plan: null, today: from, workerUrl, steps });
  try {
    return await new Brewery(open, options).live();
  } finally {
    await open.close();
  }
}

class Brewery {
  private readonly truth: Truth;
  private readonly facts = new Facts();
  private readonly told: Told[] = [];
  private readonly refused: string[] = [];
  private readonly handled = new Set<string>();
  private readonly slowed = new Set<string>();
  private subscriber = new Subscriber(async () => '');
  private today: string;
  private suspect: string | null = null;
  private suspectHadDescendants = 0;

  constructor(
    private readonly open: Awaited<ReturnType<typeof openApp>>,
    private readonly options: SeasonOptions,
  ) {
    this.truth = new Truth(options.seed, options.chance);
    this.today = options.from;
  }

  private async read<T>(path: string): Promise<T> {
    const { status, json, text } = await this.open.ask('GET', path);
    if (status !== 200) throw new Error(`${path} was answered with ${status}: ${text}`);
    return json as T;
  }

  private async plan(): Promise<Plan> {
    const { plan } = await this.read<PlanAnswer>('/api/plan');
    if (plan === null) throw new Error('there is no plan in force');
    return plan;
  }

  async live(): Promise<Season> {
    const { house, from, firstSteps, progress } = this.options;
    const begun = await this.open.ask('POST', '/api/runs', { steps: firstSteps });
    await this.open.parts.runs.ended((begun.json as { run: { id: string } }).run.id);
    const made = await this.open.ask('POST', '/api/feeds', {});
    const { address } = (made.json as { made: { address: string } }).made;
    const path = new URL(address).pathname;
    this.subscriber = new Subscriber(async () => (await this.open.ask('GET', path)).text);
    await this.subscriber.poll('at first');
    const last = next(house.to, TAIL_DAYS);
    let days = 0;
    for (let day = from; day <= last; day = next(day)) {
      this.today = day;
      this.open.setToday(day);
      this.open.setNow(`${day}T07:00:00Z`);
      const overnight = await this.subscriber.poll(day);
      if (overnight.changed.length + overnight.added.length > 0)
        this.subscriber.violations.push(`${day}: entries changed overnight`);
      await this.workOn();
      days += 1;
      if (day > house.to && (await this.isOver())) break;
      const broken = this.subscriber.violations.length + this.facts.violations.length;
      progress?.(
        `${day}: ${this.told.length} told, ${this.facts.brewed.size} brewed, ${broken} promises broken`,
      );
    }
    return {
      days,
      polls: this.subscriber.polls,
      told: this.told,
      violations: [...this.subscriber.violations, ...this.facts.violations],
      refused: this.refused,
      returned: this.subscriber.returned,
      brewed: this.facts.brewed.size,
      suspectHadDescendants: this.suspectHadDescendants,
    };
  }

  private async isOver(): Promise<boolean> {
    const { tasks } = await this.read<z.output<typeof TasksAnswer>>('/api/tasks');
    return tasks.every(({ done }) => done);
  }

  /** Works off what is due, one task after the other, as the list stands after each. */
  private async workOn(): Promise<void> {
    await this.goBad();
    const refusedToday = new Set<string>();
    for (let n = 0; n < MOST_A_DAY; n += 1) {
      const { tasks } = await this.read<z.output<typeof TasksAnswer>>(
        `/api/tasks?to=${this.today}`,
      );
      const due = tasks.find((task) => !task.done && !refusedToday.has(task.key));
      if (due === undefined) return;
      const taken = await this.tell(await this.newsOf(due));
      if (!taken) refusedToday.add(due.key);
    }
    this.facts.violations.push(`${this.today}: the day's work does not end`);
  }

  /** Once, a harvest that beers were or are to be pitched from turns out to be bad. */
  private async goBad(): Promise<void> {
    if (this.suspect !== null) return;
    if (this.facts.brewed.size < BAD_FROM * this.options.house.brews.length) return;
    const plan = await this.plan();
    const bad = plan.harvests
      .filter((one) => one.done)
      .find(({ brew }) =>
        plan.brews.some(
          ({ done, source }) => !done && source.kind === 'harvest' && source.brew === brew,
        ),
      );
    if (bad === undefined) return;
    this.suspect = bad.brew;
    this.facts.suspect = bad.brew;
    this.suspectHadDescendants = descendants(plan, new Set([bad.brew])).size;
    await this.tell({
      kind: 'suspect',
      of: { kind: 'harvest', brew: bad.brew },
      day: this.today,
    });
  }

  /** What really became of a task that is due. */
  private async newsOf(task: Due): Promise<Given> {
    const { truth, today: day } = this;
    const brew = task.brew ?? '';
    const done: Given = { kind: 'task-done', task: task.key, day };
    const plan = await this.plan();
    const planned = plan.brews.find((one) => one.brew === brew);
    if (task.key === `brew-pitch:${brew}` && planned !== undefined) {
      const days = truth.slipDays();
      if (days > 0) return { kind: 'slipped', brew, to: next(day, days) };
      if (planned.source.kind === 'fresh') return { kind: 'brewed', brew, day };
      return { kind: 'brewed', brew, day, drawnMl: truth.poured(planned.source.drawMl) };
    }
    if (task.kind === 'harvest' || task.kind === 'package') {
      const days = this.slowed.has(brew) ? 0 : truth.slowDays();
      this.slowed.add(brew);
      if (days > 0) return { kind: 'slow', brew, until: next(day, days) };
    }
    if (task.kind === 'harvest') {
      const volumeL = this.options.house.brews.find((one) => one.brew === brew)?.volumeL ?? 0;
      const settledMl = truth.harvestMl(volumeL);
      if (settledMl === null) return { kind: 'harvest-lost', brew, day };
      return { kind: 'harvested', brew, day, settledMl };
    }
    if (task.kind === 'check-jar' && planned !== undefined && planned.source.kind !== 'fresh') {
      const { source, yeast } = planned;
      const count = truth.count(yeast, between(source.harvestedOn, day));
      const key = `${task.key} counted`;
      if (count !== null && !this.handled.has(key)) {
        this.handled.add(key);
        // a beer that ferments slowly has no jar yet to look into
        if (source.kind === 'harvest' && !this.facts.isHarvested(source.brew)) return done;
        const of =
          source.kind === 'jar'
            ? ({ kind: 'jar', jar: source.jar } as const)
            : ({ kind: 'harvest', brew: source.brew } as const);
        return { kind: 'measured', of, day, ...count };
      }
    }
    return done;
  }

  /** Tells it, adopts what comes of it, and counts what a subscriber sees of it. @returns whether it was taken */
  private async tell(news: Given): Promise<boolean> {
    const before = await this.plan();
    const began = performance.now();
    const answer = await this.open.ask('POST', '/api/news', news);
    if (answer.status !== 201) {
      const { error } = answer.json as { error: { code: string; message: string } };
      if (answer.status !== 409) throw new Error(`news was answered with ${answer.text}`);
      this.refused.push(`${this.today} ${JSON.stringify(news)}: ${error.message}`);
      return false;
    }
    const { run } = answer.json as { run: { id: string } | null };
    if (run !== null) await this.open.parts.runs.ended(run.id);
    const seconds = (performance.now() - began) / 1000;
    const { draft } = await this.read<DraftAnswer>('/api/draft');
    if (draft !== null) {
      if (draft.stale) this.facts.violations.push(`${this.today}: a fresh draft is stale`);
      const adopted = await this.open.ask('POST', '/api/draft/adopt', { draft: draft.id });
      if (adopted.status !== 200) throw new Error(`adopting was answered with ${adopted.text}`);
    }
    const after = await this.plan();
    this.facts.note(news, after);
    this.facts.hold(after, `${this.today} after ${news.kind}`);
    const slip = news.kind === 'slipped' ? touchedBySlip(news.brew, [before, after]) : null;
    const expected = slip === null ? null : this.subscriber.countOf(slip);
    const { added, gone, changed, moved } = await this.subscriber.poll(
      `${this.today} ${news.kind}`,
    );
    const all = [...added, ...gone, ...changed];
    this.told.push({
      day: this.today,
      kind: news.kind,
      entries: all.length,
      shifted: added.length + gone.length + moved.length,
      expected,
      elsewhere: slip === null ? null : all.filter((key) => !slip.has(brewOf(key))).length,
      replanned: run !== null,
      seconds,
    });
    return true;
  }
}
