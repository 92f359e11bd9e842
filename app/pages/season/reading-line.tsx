// One line of reading below the picture: everything about the beer under the pointer or the focus.
import { useLayoutEffect, useState } from 'react';
import type { House, Plan } from '../../../planner/index.ts';
import { shortDay } from '../../parts/days.ts';
import type { Units } from '../../parts/units.ts';
import { brewWords } from '../../parts/words.ts';
import { type Active, useActive } from './active.ts';
import { type TrialAsked, TrialWords } from './trial-words.tsx';
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
  active: Active;
  plan: Plan;
  house: House;
  woven: Weave;
  units: Units;
}) {
  const { plan, house, woven, units } = props;
  const pointed = useActive(props.active);
  const brew = plan.brews.find((one) => one.brew === pointed) ?? null;
  const broken = woven.bars.find((bar) => bar.brew === brew?.brew)?.broken ?? [];
  const end = woven.ends.find((one) => one.brew === brew?.brew);
  return (
    <p className="reading-line" data-testid="reading-line">
      {brew === null ? (
        <span className="quiet">
          Point at a beer to read about it. With the keyboard: Tab into the picture, then ← and →
          follow the yeast, ↑ and ↓ go from line to line, Enter opens the reasons, M takes the beer
          up to move it, + and − zoom. With the mouse: drag a beer to another day or tank.
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

/**
 * What putting a carried beer down here would break or cost. It keeps to the half of the window in which the
 * beer is not.
 */
export function CarryingLine(props: {
  asked: TrialAsked;
  plan: Plan;
  stays: boolean;
  by: 'pointer' | 'keys';
}) {
  const [side, setSide] = useState<'top' | 'bottom'>('bottom');
  const { tank } = props.asked;
  useLayoutEffect(() => {
    const beer = document.querySelector(`.ghost[data-tank="${CSS.escape(tank)}"] .carried`);
    const box = beer?.getBoundingClientRect();
    if (box) setSide(box.top + box.height / 2 > window.innerHeight / 2 ? 'top' : 'bottom');
  }, [tank]);
  return (
    <div className="reading-line">
      <div className={`carrying-line ${side}`} data-testid="carrying-line" role="status">
        <TrialWords asked={props.asked} plan={props.plan} stays={props.stays} remedies={false} />
        <p className="quiet">
          {props.by === 'keys'
            ? '← and → go from brew day to brew day, ↑ and ↓ from tank to tank. Enter puts it down and holds it there, Escape leaves it where it was.'
            : 'Let go to put it down and hold it there; Escape leaves it where it was.'}
        </p>
      </div>
    </div>
  );
}
