// What the picture cannot write out: which thread is which strain, and why each line of yeast ends.
import { memo } from 'react';
import type { StrainLook } from '../../parts/strains.ts';
import { hashOf } from '../../router.ts';
import type { Weave } from './weave.ts';

/** A strain's letter, its thread as the picture draws it, and its name. */
export function StrainKey(props: { looks: ReadonlyMap<string, StrainLook> }) {
  return (
    <ul className="strain-key" aria-label="Strains">
      {[...props.looks.values()].map((look) => (
        <li key={look.yeast} className={`hue-${look.hue}`}>
          <b>{look.letter}</b>
          <ThreadSample look={look} />
          {look.yeast}
        </li>
      ))}
    </ul>
  );
}

export function ThreadSample(props: { look: StrainLook }) {
  return (
    <svg width="44" height="10" aria-hidden="true" className={`thread hue-${props.look.hue}`}>
      <path className="strand" d="M1 5H43" strokeWidth="5.2" />
      {props.look.weave !== 'plain' && <path className={`core ${props.look.weave}`} d="M1 5H43" />}
    </svg>
  );
}

/** The numbered notes: every line of yeast, from its root to the beer at which it ends, and why. */
export const ChainNotes = memo(function ChainNotes(props: {
  woven: Weave;
  looks: ReadonlyMap<string, StrainLook>;
  setActive: (brew: string | null) => void;
}) {
  const { woven, looks } = props;
  return (
    <section className="below" aria-labelledby="chain-notes">
      <h2 id="chain-notes">Where each line of yeast ends</h2>
      <p className="quiet">
        The numbers stand at the end of a beer in the picture. A letter with a figure is the strain
        and the generation pitched: fresh packs are 0, slurry out of their first beer is 1.
      </p>
      <ol className="chain-notes">
        {woven.ends.map((end) => (
          <li key={end.note} className={`hue-${looks.get(end.yeast)?.hue ?? 1}`}>
            <span className="number">{end.note}</span>
            <span>
              {end.root}
              {end.brews.map((brew) => (
                <span key={brew}>
                  {' → '}
                  <a
                    href={hashOf({ page: 'pitch', brew })}
                    onPointerEnter={() => props.setActive(brew)}
                    onPointerLeave={() => props.setActive(null)}
                  >
                    {brew}
                  </a>
                </span>
              ))}
              . <em>{end.says}</em>
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
});
