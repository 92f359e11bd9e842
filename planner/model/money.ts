// Money as people read it: whole minor units of the house's currency in, '€12.50' out.

/** What has a currency: a plan, or whatever else says both. */
export type Coin = { readonly currency: string; readonly minorPerMajor: number };

/** An amount of minor units in words of the currency; whole amounts lose their zeros. */
export function money(amountMinor: number, coin: Coin): string {
  const digits = Math.max(0, Math.round(Math.log10(coin.minorPerMajor)));
  const whole = amountMinor % coin.minorPerMajor === 0;
  return new Intl.NumberFormat('en-GB', {
    style: 'currency',
    currency: coin.currency,
    minimumFractionDigits: whole ? 0 : digits,
    maximumFractionDigits: digits,
  }).format(amountMinor / coin.minorPerMajor);
}
