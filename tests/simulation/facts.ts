// What was told in the simulated season, kept beside the server, and held against every plan in force after it.
import type { z } from 'zod';
import type { News, Plan } from '../../planner/index.ts';
import { descendants } from './kin.ts';
import { brewOf } from './subscriber.ts';

/** A harvest's figure comes back as it was told, but for the digits that a plan keeps. */
const SAME_ML = 1;

export class Facts {
  readonly brewed = new Map<string, { day: string; tank: string }>();
  private readonly harvested = new Map<string, { day: string; settledMl: number }>();
  private readonly notBefore = new Map<string, string>();
  /** Harvests of which all or some is gone: their mL are no longer those that were told. */
  private readonly lost = new Set<string>();
  readonly violations: string[] = [];
  /** The harvest that went bad. */
  suspect: string | null = null;

  /** @param plan in force after it; it says into which tank a brew went that was told without one */
  note(news: z.input<typeof News>, plan: Plan): void {
    if (news.kind === 'brewed') {
      const tank = plan.brews.find((one) => one.brew === news.brew)?.tank ?? '';
      this.brewed.set(news.brew, { day: news.day, tank });
    }
    if (news.kind === 'harvested') this.harvested.set(news.brew, news);
    if (news.kind === 'harvest-lost') this.lost.add(news.brew);
    // a jar that was thrown away is no longer part of what was harvested
    if (news.kind === 'task-done' && news.task.startsWith('discard-by:'))
      this.lost.add(brewOf(news.task));
    if (news.kind === 'slipped') this.notBefore.set(news.brew, news.to);
  }

  isHarvested(brew: string): boolean {
    return this.harvested.has(brew);
  }

  /** Everything that a plan in force contradicts. */
  hold(plan: Plan, when: string): void {
    const say = (text: string) => this.violations.push(`${when}: ${text}`);
    for (const [brew, { day, tank }] of this.brewed) {
      const planned = plan.brews.find((one) => one.brew === brew);
      if (!planned?.done || planned.day !== day || planned.tank !== tank)
        say(`${brew} was brewed on ${day} into ${tank}, and the plan says otherwise`);
    }
    for (const [brew, to] of this.notBefore) {
      const planned = plan.brews.find((one) => one.brew === brew);
      if (planned && !planned.done && planned.day < to) say(`${brew} is planned before ${to}`);
    }
    for (const one of plan.harvests) {
      const told = this.harvested.get(one.brew);
      const same =
        told === undefined ||
        this.lost.has(one.brew) ||
        (one.done &&
          one.day === told.day &&
          Math.abs(one.settledMl.likely - told.settledMl) <= SAME_ML);
      if (!same) say(`the harvest of ${one.brew} was told and the plan says otherwise`);
    }
    if (this.suspect === null) return;
    const tainted = descendants(plan, new Set([this.suspect]));
    for (const brew of plan.brews) {
      if (!brew.done && tainted.has(brew.brew)) say(`${brew.brew} is pitched from a suspect`);
    }
  }
}
