// Money as people read it: whole minor units of the house's currency in, '€12.50' out.

/** An amount of minor units in words of the currency; whole amounts lose their zeros. */
export function money(
  amountMinor: number,
  plan: { currency: string; minorPerMajor: number },
): string {
  const digits = Math.max(0, Math.round(Math.log10(plan.minorPerMajor)));
  const whole = amountMinor % plan.minorPerMajor === 0;
  return new Intl.NumberFormat('en-GB', {
    style: 'currency',
    currency: plan.currency,
    minimumFractionDigits: whole ? 0 : digits,
    maximumFractionDigits: digits,
  }).format(amountMinor / plan.minorPerMajor);
}

/** A difference with its sign said: '€3 more', '€2.40 less', 'the same'. */
export function moneyDifference(
  amountMinor: number,
  plan: { currency: string; minorPerMajor: number },
): string {
  if (amountMinor === 0) return 'the same';
  return `${money(Math.abs(amountMinor), plan)} ${amountMinor > 0 ? 'more' : 'less'}`;
}
