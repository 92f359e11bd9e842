// The relaxed season as plain arrays: where each brew can stand, what each can be pitched with, who can feed whom.
//
// A *taker* is a brew still to be brewed, or the jar of one strain that may be kept. A *node* is a taker on one brew day with
// one strain (and of one generation, where those are told apart). A *state* is a node in the tanks that give one set of crops:
// what a giver must be in for a crop to exist. A *link* joins a state to a taker; an *arc* is a link at one node. A delivery of
// packs on a day is a state of its own: it costs once, and all who order can share it.

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
  takers: number;
  /** Of the takers, the first are brews (the indices of the problem in `brewOf`), the rest jars to keep. */
  brews: number;
  brewOf: Int32Array;
  /** Priority of each brew taker: what leaving it out takes from what may be left out; 0: it cannot be. */
  priority: Int32Array;
  /** Nodes of taker c: `nodeStart[c]` up to `nodeStart[c + 1]`. */
  nodeStart: Int32Array;
  nodeDay: Int32Array;
  /** Brew-day index of each node, for the kettle. */
  nodeAt: Int32Array;
  /** Tanks of a node: group, first brew-day index, first one after, cost, state or -1. */
  berthStart: Int32Array;
  berthGroup: Int32Array;
  berthFrom: Int32Array;
  berthUntil: Int32Array;
  berthCost: Float64Array;
  berthState: Int32Array;
  /** Ways to pitch without a crop of this season: packs and jars. */
  wayStart: Int32Array;
  wayCost: Float64Array;
  /** Jar that it takes, or -1. */
  wayJar: Int32Array;
  /** Strain whose paid-for packs it takes, or -1, and how many. */
  wayHand: Int32Array;
  wayPacks: Int32Array;
  /** Crops: arcs of a node. */
  arcStart: Int32Array;
  arcLink: Int32Array;
  arcCost: Float64Array;
  /** Strain whose paid-for packs it takes besides, or -1, and how many. */
  arcHand: Int32Array;
  arcPacks: Int32Array;
  /** Links, those of one state side by side: `linkStart[s]` up to `linkStart[s + 1]`. */
  linkStart: Int32Array;
  linkTaker: Int32Array;
  /** Share of the state's crop that the taker draws at least. */
  linkShare: Float64Array;
  /** The brew taker of each state, or -1 for a brewed beer. */
  stateTaker: Int32Array;
  /** What taking the crop costs once. */
  stateOnce: Float64Array;
  /** By tank group and brew-day index: how many tanks there are. */
  groups: number;
  roomOf: Int32Array;
  /** Brew days that anything can start on, and what may start there. */
  days: Int32Array;
  startsOf: Int32Array;
  jars: number;
  /** Paid-for packs of each strain. */
  hand: Int32Array;
  /** What is paid whatever is decided. */
  fixed: number;
};
