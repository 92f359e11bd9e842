// One line of reading below the picture: everything about the beer under the pointer or the focus.
import type { House, PlannedBrew } from '../../../planner/index.ts';
import { shortDay } from '../../parts/days.ts';
import type { Units } from '../../parts/units.ts';
import { brewWords } from '../../parts/words.ts';
import type { Weave } from './weave.ts';

/** When a brew may begin and when it is wanted, as far as the season says so. */
export function windowWords(brew: string, house: House): string {
  const wish = house.brews.find((one) => one.brew === brew);
  if (!wish) return '';
  const parts = [
    wish.brewOn ? `Fixed on ${shortDay(wish.brewOn)}.` : '',
    wish.notBefore ? `Not to be brewed before ${shortDay(wish.notBefore)}.` : '',
    wish.readyBy ? `Wanted in the glass by ${shortDay(wish.readyBy)}.` : '',
  ];
  return parts.filter((part) => part !== '').join(' ');
}

export function ReadingLine(props: {
  brew: PlannedBrew | null;
  house: House;
  woven: Weave;
  units: Units;
}) {
  const { brew, house, woven, units } = props;
  const broken = woven.bars.find((bar) => bar.brew === brew?.brew)?.broken ?? [];
  const end = woven.ends.find((one) => one.brew === brew?.brew);
  return (
    <p className="reading-line" data-testid="reading-line">
      {brew === null ? (
        <span className="quiet">
          Point at a beer to read about it. With the keyboard: Tab into the picture, then ← and →
          follow the yeast, ↑ and ↓ go from line to line, Enter opens the reasons.
        </span>
      ) : (
        <>
          {brewWords(brew, units)} <span className="wanted">{windowWords(brew.brew, house)}</span>
          {broken.length > 0 && <strong className="red"> {broken.join(' ')}</strong>}
          {end && <em> The line ends here: {end.says}</em>}
        </>
      )}
    </p>
  );
}
