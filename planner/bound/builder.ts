// Gathers nodes, ways, links and arcs as they are found, and lays them out as the arrays of the bound.
import { Column, type Net } from './net.ts';
import type { Berth } from './takers.ts';

/** A way to pitch: what it takes of the jars and of the packs that are paid for. */
export type Way = { cost: number; jar: number; hand: number; packs: number };

export class Builder {
  stateCount = 0;
  arcCount = 0;
  private takerCount = 0;
  private readonly nodeStart = new Column();
  private readonly nodeDay = new Column();
  private readonly nodeAt = new Column();
  private readonly berthStart = new Column();
  private readonly berthGroup = new Column();
  private readonly berthFrom = new Column();
  private readonly berthUntil = new Column();
  private readonly berthCost = new Column();
  private readonly berthState = new Column();
  private readonly wayStart = new Column();
  private readonly wayCost = new Column();
  private readonly wayJar = new Column();
  private readonly wayHand = new Column();
  private readonly wayPacks = new Column();
  private readonly arcStart = new Column();
  private readonly arcLink = new Column();
  private readonly arcCost = new Column();
  private readonly arcHand = new Column();
  private readonly arcPacks = new Column();
  private readonly linkState = new Column();
  private readonly linkTaker = new Column();
  private linkShare: number[] = [];
  private readonly stateTaker = new Column();
  private readonly stateOnce = new Column();
  /** Links of the taker at hand, by state and whether a starter is made. */
  private links = new Map<number, number>();

  /** A state, numbered in order; `taker` -1: what gives there is no choice of a brew. */
  state(taker: number, once: number): void {
    this.stateTaker.push(taker);
    this.stateOnce.push(once);
    this.stateCount++;
  }

  taker(): void {
    this.takerCount++;
    this.nodeStart.push(this.nodeDay.length);
    this.links = new Map();
  }

  node(day: number, at: number): void {
    this.nodeDay.push(day);
    this.nodeAt.push(at);
    this.berthStart.push(this.berthGroup.length);
    this.wayStart.push(this.wayCost.length);
    this.arcStart.push(this.arcCost.length);
  }

  berth(berth: Berth, state: number): void {
    this.berthGroup.push(berth.group);
    this.berthFrom.push(berth.from);
    this.berthUntil.push(berth.until);
    this.berthCost.push(berth.cost);
    this.berthState.push(state);
  }

  way(way: Way): void {
    this.wayCost.push(way.cost);
    this.wayJar.push(way.jar);
    this.wayHand.push(way.hand);
    this.wayPacks.push(way.packs);
  }

  /** An arc that takes packs which are paid for besides. */
  arc(state: number, starter: boolean, cost: number, share: number, hand = -1, packs = 0): void {
    const key = state * 2 + (starter ? 1 : 0);
    let link = this.links.get(key);
    if (link === undefined) {
      link = this.linkState.length;
      this.links.set(key, link);
      this.linkState.push(state);
      this.linkTaker.push(this.takerCount - 1);
      this.linkShare.push(share);
    }
    if (share < (this.linkShare[link] as number)) this.linkShare[link] = share;
    this.arcLink.push(link);
    this.arcCost.push(cost);
    this.arcHand.push(hand);
    this.arcPacks.push(packs);
    this.arcCount++;
  }

  finish(
    rest: Pick<
      Net,
      | 'brews'
      | 'brewOf'
      | 'priority'
      | 'groups'
      | 'roomOf'
      | 'days'
      | 'startsOf'
      | 'jars'
      | 'hand'
      | 'fixed'
    >,
  ): Net {
    this.nodeStart.push(this.nodeDay.length);
    this.berthStart.push(this.berthGroup.length);
    this.wayStart.push(this.wayCost.length);
    this.arcStart.push(this.arcCost.length);
    // links side by side by state
    const states = this.linkState.ints();
    const linkStart = new Int32Array(this.stateCount + 1);
    for (const s of states) linkStart[s + 1] = (linkStart[s + 1] as number) + 1;
    for (let s = 0; s < this.stateCount; s++) {
      linkStart[s + 1] = (linkStart[s + 1] as number) + (linkStart[s] as number);
    }
    const next = linkStart.slice();
    const place = new Int32Array(states.length);
    const linkTaker = new Int32Array(states.length);
    const linkShare = new Float64Array(states.length);
    const takers = this.linkTaker.ints();
    for (let l = 0; l < states.length; l++) {
      const s = states[l] as number;
      const at = next[s] as number;
      next[s] = at + 1;
      place[l] = at;
      linkTaker[at] = takers[l] as number;
      linkShare[at] = this.linkShare[l] as number;
    }
    const arcLink = this.arcLink.ints();
    for (let a = 0; a < arcLink.length; a++) arcLink[a] = place[arcLink[a] as number] as number;
    return {
      ...rest,
      takers: this.takerCount,
      nodeStart: this.nodeStart.ints(),
      nodeDay: this.nodeDay.ints(),
      nodeAt: this.nodeAt.ints(),
      berthStart: this.berthStart.ints(),
      berthGroup: this.berthGroup.ints(),
      berthFrom: this.berthFrom.ints(),
      berthUntil: this.berthUntil.ints(),
      berthCost: this.berthCost.floats(),
      berthState: this.berthState.ints(),
      wayStart: this.wayStart.ints(),
      wayCost: this.wayCost.floats(),
      wayJar: this.wayJar.ints(),
      wayHand: this.wayHand.ints(),
      wayPacks: this.wayPacks.ints(),
      arcStart: this.arcStart.ints(),
      arcLink,
      arcCost: this.arcCost.floats(),
      arcHand: this.arcHand.ints(),
      arcPacks: this.arcPacks.ints(),
      linkStart,
      linkTaker,
      linkShare,
      stateTaker: this.stateTaker.ints(),
      stateOnce: this.stateOnce.floats(),
    };
  }
}
