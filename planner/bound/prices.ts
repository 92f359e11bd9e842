// Where each kind of price stands in the one array of prices.
import type { Net } from './net.ts';

/** A set of brews of which at least one is fed from outside the set. */
export type Cut = { inside: Uint8Array };

export type Places = {
  /** What each brew pays to be in a plan; these alone may be below zero. */
  brews: number;
  room: number;
  starts: number;
  orders: number;
  hand: number;
  /** By strain: the one jar that may be kept. */
  keeps: number;
  left: number;
  cuts: number;
  count: number;
};

export function placesOf(net: Net, mostCuts: number): Places {
  const room = net.brews;
  const starts = room + net.tankGroups * net.days.length;
  const orders = starts + net.days.length;
  const hand = orders + net.deliveries.orders;
  const keeps = hand + net.hand.length;
  const left = keeps + net.yeasts;
  const cuts = left + 1;
  return { brews: 0, room, starts, orders, hand, keeps, left, cuts, count: cuts + mostCuts };
}
