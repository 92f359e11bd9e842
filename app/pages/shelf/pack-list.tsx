// Packs that are paid for, a line for each making.
import type { StandingPacks } from '../../../planner/index.ts';
import { fullDay, shortDay } from '../../parts/days.ts';
import type { StrainLook } from '../../parts/strains.ts';
import { count } from '../../parts/words.ts';
import { cellsWords, shareWords } from './jar-words.ts';

export function PackList(props: {
  packs: readonly StandingPacks[];
  looks: ReadonlyMap<string, StrainLook>;
  today: string;
}) {
  const { packs, looks, today } = props;
  if (packs.length === 0) return <p className="quiet">No pack is in the house or on its way.</p>;
  return (
    <ul className="jars">
      {packs.map((one) => (
        <li
          key={`${one.yeast} ${one.madeOn} ${one.hereFrom}`}
          className={`shelf-jar pack hue-${looks.get(one.yeast)?.hue ?? 1}`}
        >
          <span className="pack-count figures">{one.packs}</span>
          <p className="jar-what">
            {count(one.packs, 'pack').replace(/^\d+ /, '')} of {one.yeast}, generation 0
            <span className="quiet">
              {one.hereFrom === null
                ? `made ${fullDay(one.madeOn)}`
                : `comes ${shortDay(one.hereFrom)}`}
            </span>
          </p>
          <p className="jar-much">
            {cellsWords(one.cellsB)}
            <span className="quiet">living, in each</span>
          </p>
          <p className="jar-alive">
            {shareWords(one.alive)} alive {one.hereFrom === null ? 'today' : 'then'}
          </p>
          <p className="jar-goes">
            {one.for.length === 0 ? 'for no brew' : `for ${one.for.join(', ')}`}
            <span className={one.useBy < today ? 'red' : 'quiet'}>use by {fullDay(one.useBy)}</span>
          </p>
        </li>
      ))}
    </ul>
  );
}
