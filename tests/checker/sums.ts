// Book-keeping: every brew placed or left out, totals equal to their lines, orders equal to what is used.
import type { Case } from './case.ts';

function checkBrews(c: Case): void {
  const { plan, house } = c;
  const placed = plan.brews.map((brew) => brew.brew);
  const left = plan.leftOut.map((brew) => brew.brew);
  for (const brew of house.brews) {
    const times = [...placed, ...left].filter((name) => name === brew.brew).length;
    if (times !== 1)
      c.report(
        'sums placed-or-left-out',
        brew.brew,
        Math.abs(times - 1),
        'brews',
        `${brew.brew} stands ${times} times in the plan.`,
      );
    // A fixed day that cannot be met stays where it is, shown as broken.
    if (brew.brewOn !== null && left.includes(brew.brew))
      c.report(
        '1 fixed-day',
        brew.brew,
        1,
        'brews',
        `${brew.brew} is fixed on ${brew.brewOn} and left out.`,
      );
  }
  for (const name of left)
    if (!house.brews.some((brew) => brew.brew === name))
      c.report('sums unknown-brew', name, 1, 'brews', `${name} is no brew of the house.`);
}

function checkTotals(c: Case): void {
  const { plan, house } = c;
  const { totals } = plan;
  const same = (clause: string, given: number, wanted: number) => {
    if (given !== wanted)
      c.report(
        `sums ${clause}`,
        'totals',
        Math.abs(given - wanted),
        clause,
        `The total of ${clause} is ${wanted}, not ${given}.`,
      );
  };
  const part = (name: string) =>
    plan.costs
      .filter((line) => line.part === name)
      .reduce((sum, line) => sum + line.amountMinor, 0);
  same('cash', totals.cashMinor, part('cash'));
  same('work', totals.workMinor, part('work'));
  same('risk', totals.riskMinor, part('risk'));
  same('cost', totals.costMinor, totals.cashMinor + totals.workMinor + totals.riskMinor);
  same(
    'hard',
    totals.hard,
    plan.broken.reduce((sum, finding) => sum + finding.amount, 0),
  );
  same('leftOut', totals.leftOut, plan.leftOut.length);
  const priorities = new Map(house.brews.map((brew) => [brew.brew, brew.priority]));
  same(
    'leftOutPriority',
    totals.leftOutPriority,
    plan.leftOut.reduce((sum, left) => sum + (priorities.get(left.brew) ?? 0), 0),
  );
  same(
    'lateDays',
    totals.lateDays,
    c.placed.reduce((sum, p) => sum + (p.plan.done ? 0 : p.plan.daysLate), 0),
  );
  same(
    'packs',
    totals.packs,
    plan.orders.flatMap((order) => order.lines).reduce((sum, line) => sum + line.packs, 0),
  );
  same('deliveries', totals.deliveries, plan.orders.length);
  const status = totals.hard > 0 ? 'broken' : totals.leftOut > 0 ? 'some-left-out' : 'whole';
  if (plan.status !== status)
    c.report('sums status', 'totals', 1, 'status', `The plan is ${status}, not ${plan.status}.`);
}

/** What is ordered of each strain is what the brews named take beyond the packs on hand. */
function checkOrders(c: Case): void {
  const minor = c.plan.minorPerMajor;
  const served = new Map<string, number>();
  for (const order of c.plan.orders) {
    if (order.deliveryMinor !== Math.round(c.house.deliveryCost * minor))
      c.report(
        'sums delivery',
        order.orderOn,
        1,
        'orders',
        `A delivery costs ${c.house.deliveryCost}.`,
      );
    for (const line of order.lines) {
      const price = Math.round((c.yeastOf.get(line.yeast)?.packPrice ?? 0) * minor) * line.packs;
      if (line.costMinor !== price)
        c.report(
          'sums order-price',
          line.yeast,
          Math.abs(line.costMinor - price),
          'minor units',
          `${line.packs} packs cost ${price}.`,
        );
      let wanted = 0;
      for (const name of line.for) {
        served.set(name, (served.get(name) ?? 0) + 1);
        const plan = c.placedOf.get(name)?.plan;
        if (plan?.source.kind !== 'fresh' || plan.yeast !== line.yeast) continue;
        wanted += plan.source.packs - plan.source.packsFromHand;
        if (plan.source.orderOn !== order.orderOn || plan.source.arrivesOn !== order.arrivesOn)
          c.report('dates order', name, 1, 'orders', `${name} and its order give different days.`);
      }
      if (wanted !== line.packs)
        c.report(
          'sums order',
          line.yeast,
          Math.abs(wanted - line.packs),
          'packs',
          `${line.packs} packs of ${line.yeast} are ordered, ${wanted} are wanted.`,
        );
    }
  }
  for (const { plan } of c.placed) {
    const bought = plan.source.kind === 'fresh' ? plan.source.packs - plan.source.packsFromHand : 0;
    const lines = served.get(plan.brew) ?? 0;
    if (!plan.done && lines !== (bought > 0 ? 1 : 0))
      c.report(
        'sums ordered-for',
        plan.brew,
        bought,
        'packs',
        `${plan.brew} stands in ${lines} lines of orders.`,
      );
  }
}

/** The book-keeping. */
export function checkSums(c: Case): void {
  checkBrews(c);
  checkTotals(c);
  checkOrders(c);
}
