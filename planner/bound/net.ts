// The relaxed season as plain arrays: where each brew can stand, what begins a tree there, and who can feed whom.
//
// A *node* is a brew on one brew day with one strain. A *state* is a node in the tanks that give one set of crops, or a brewed
// beer: what a giver must be in for a crop to exist. Its *groups* are the brews that it can feed, each with *arcs* to that
// brew's nodes, those without a starter first. A *level* is the generation that a brew is pitched with; the last level
// stands for all from there on. A *root* is what a tree of feedings begins with: packs, a jar of the shelf, a brewed beer.

/** A growing list of numbers that becomes a typed array. */
export class Column {
  private data = new Float64Array(1024);
  length = 0;
  push(value: number): void {
    if (this.length === this.data.length) {
      const larger = new Float64Array(this.length * 2);
      larger.set(this.data);
      this.data = larger;
    }
    this.data[this.length++] = value;
  }
  floats(): Float64Array {
    return this.data.slice(0, this.length);
  }
  ints(): Int32Array {
    return Int32Array.from(this.data.subarray(0, this.length));
  }
}

export type Net = {
  /** Brews that are still to be brewed, and their numbers in the problem. */
  brews: number;
  brewOf: Int32Array;
  /** What leaving a brew out takes from what may be left out. */
  priority: Int32Array;
  levels: number;
  yeasts: number;
  /** Nodes of brew c: `nodeStart[c]` up to `nodeStart[c + 1]`. */
  nodeStart: Int32Array;
  nodeBrew: Int32Array;
  nodeDay: Int32Array;
  nodeYeast: Int32Array;
  /** Brew-day index of each node, for the kettle. */
  nodeAt: Int32Array;
  /** All nodes by day, earliest first. */
  byDay: Int32Array;
  /** Tanks of a node: group, first brew-day index, first one after, cost, state or -1. */
  berthStart: Int32Array;
  berthGroup: Int32Array;
  berthFrom: Int32Array;
  berthUntil: Int32Array;
  berthCost: Float64Array;
  berthState: Int32Array;
  /** Packs that a node can be pitched with. */
  wayStart: Int32Array;
  wayCost: Float64Array;
  /** Strain whose paid-for packs it takes, or -1, and how many. */
  wayHand: Int32Array;
  wayPacks: Int32Array;
  /** Place among the prices of deliveries, or -1: orders nothing. */
  wayOrder: Int32Array;
  /** By jar of the shelf: the nodes that it can be pitched into, at what level and cost. */
  jars: number;
  jarStart: Int32Array;
  jarNode: Int32Array;
  jarLevel: Int32Array;
  jarCost: Float64Array;
  /** By jar: its strain, and what keeping it for the next season costs (below 0: is worth). */
  jarYeast: Int32Array;
  jarKeep: Float64Array;
  /** States of node n: `stateStart[n]` up to `stateStart[n + 1]`; those of brewed beers come after the last node's. */
  stateStart: Int32Array;
  states: number;
  /** Brew among those to be brewed, or -1 for a brewed beer; and that one's level. */
  stateBrew: Int32Array;
  stateLevel: Int32Array;
  stateYeast: Int32Array;
  /** What taking the crop costs once. */
  stateOnce: Float64Array;
  /** By state and level: what keeping a jar of it costs (below 0: is worth), or 0. */
  stateKeep: Float64Array;
  /** Groups of state s: `groupStart[s]` up to `groupStart[s + 1]`. */
  groupStart: Int32Array;
  groupTaker: Int32Array;
  /** Arcs without a starter from `groupArc[g]`, with one from `groupStarter[g]`, up to `groupArc[g + 1]`. */
  groupArc: Int32Array;
  groupStarter: Int32Array;
  /** Share of the crop that the taker draws at least, without a starter and with one. */
  groupShare: Float64Array;
  groupShareStarter: Float64Array;
  arcNode: Int32Array;
  /** By arc and level of the giver. */
  arcCost: Float64Array;
  /** By tank group and brew-day index: how many tanks there are. */
  tankGroups: number;
  roomOf: Int32Array;
  /** Brew days that anything can start on, and what may start there. */
  days: Int32Array;
  startsOf: Int32Array;
  /** Paid-for packs of each strain. */
  hand: Int32Array;
  deliveries: DeliveryNet;
  /** What is paid whatever is decided. */
  fixed: number;
};

/** Orders by brew and stretch of days; and by delivery the orders that it can bring, those of one brew side by side. */
export type DeliveryNet = {
  minor: number;
  orders: number;
  /** Orders of delivery i: `start[i]` up to `start[i + 1]`. */
  start: Int32Array;
  order: Int32Array;
  /** The brew of each order. */
  brewOf: Int32Array;
};
