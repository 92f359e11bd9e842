// What each strain gives: how many beers out of how many packs, and whether a jar is left at the end.
import type { Plan } from '../../../planner/index.ts';
import type { StrainLook } from '../../parts/strains.ts';
import { count } from '../../parts/words.ts';
import { strainsOf } from './weighing.ts';

export function StrainLedger(props: { plan: Plan; looks: Map<string, StrainLook> }) {
  const sums = strainsOf(props.plan);
  return (
    <section aria-labelledby="strains">
      <h2 id="strains">{count(sums.length, 'strain')} kept alive</h2>
      <ul className="strain-sums">
        {sums.map((sum) => {
          const look = props.looks.get(sum.yeast);
          return (
            <li key={sum.yeast} className={look ? `hue-${look.hue}` : ''}>
              <h3>
                <span className="strain-letter" aria-hidden="true">
                  {look?.letter}
                </span>{' '}
                {sum.yeast}
              </h3>
              <p className="figures">
                {count(sum.brews, 'beer')} out of {count(sum.packs, 'pack')}
                {sum.repitches > 0
                  ? `; ${count(sum.repitches, 're-pitch', 're-pitches')}, ${count(sum.longest, 'beer')} in its longest line, pitched up to generation ${sum.oldest} (a fresh pack is 0)`
                  : ''}
                .{' '}
                {sum.keptForNext
                  ? 'A jar is left for the next season.'
                  : 'No jar is left for the next season.'}
              </p>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
