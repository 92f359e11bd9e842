// The shelf: jars and packs in the cold, jars to come, and the family tree; its labels, and the page of each jar, harvest and beer.
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Shelf, StandingJar } from '../../../planner/index.ts';
import { ErrorNotice } from '../../parts/failed.tsx';
import { type StrainLook, strainLooks } from '../../parts/strains.ts';
import { useUnits } from '../../parts/units.ts';
import { count } from '../../parts/words.ts';
import { houseQuery } from '../../queries/house.ts';
import { planQuery } from '../../queries/plan.ts';
import { shelfQuery } from '../../queries/shelf.ts';
import { hashOf, type ShelfView } from '../../router.ts';
import '../../styles/shelf.css';
import { SomethingElse } from '../tasks/something-else.tsx';
import { CultureSheet } from './culture-sheet.tsx';
import { Family } from './family.tsx';
import { findOn } from './find.ts';
import { JarList } from './jar-list.tsx';
import { LabelsPage } from './labels-page.tsx';
import { PackList } from './pack-list.tsx';
import { StrainHead } from './strain-head.tsx';

/** Jars to come that are shown before more is asked for. */
const NEXT = 6;

export default function ShelfPage(props: { view: ShelfView; name: string }) {
  const answer = useQuery(shelfQuery);
  const plan = useQuery(planQuery).data?.plan ?? null;
  const known = useQuery(houseQuery).data;
  const house = known?.now ?? known?.house ?? null;
  if (answer.isError) return <ErrorNotice error={answer.error} />;
  if (answer.isPending) return <p className="quiet waiting">Looking into the cold store …</p>;
  const { shelf } = answer.data;
  if (shelf === null || plan === null || house === null) {
    return (
      <>
        <h1 className="season-title">The shelf</h1>
        <p className="lead-text">
          No plan is in force yet. The jars of the list are written on the page{' '}
          <a href={hashOf({ page: 'house' })}>House</a>.
        </p>
      </>
    );
  }
  const looks = strainLooks(plan, house);
  if (props.view === 'labels') return <LabelsPage shelf={shelf} looks={looks} />;
  if (props.view === 'all') return <WholeShelf shelf={shelf} looks={looks} />;
  const found = findOn(shelf, props.view, props.name);
  if (found === null) {
    return (
      <>
        <h1 className="season-title">Nothing on the shelf is called {props.name}</h1>
        <p className="lead-text">
          Codes are read without regard to capitals. A jar of a harvest that is no longer planned
          has lost its code.{' '}
          <a href={hashOf({ page: 'shelf', view: 'all', name: '' })}>The shelf</a>
        </p>
      </>
    );
  }
  return <CultureSheet shelf={shelf} looks={looks} found={found} />;
}

function WholeShelf(props: { shelf: Shelf; looks: ReadonlyMap<string, StrainLook> }) {
  const { shelf, looks } = props;
  const [units] = useUnits();
  const [all, setAll] = useState(false);
  const next = all ? shelf.toCome : shelf.toCome.slice(0, NEXT);
  const doubted = shelf.cultures.some(({ state }) => state !== 'sound');
  const one = { today: shelf.today, units };
  return (
    <>
      <h1 className="season-title">The shelf</h1>
      <p className="lead-text">
        {count(shelf.jars.length, 'jar')} in the cold, {shelf.toCome.length} to come. Generations
        count from the pack: a fresh pack is 0, slurry out of its first beer is 1.
      </p>
      <p className="shelf-acts">
        <a className="button first" href={hashOf({ page: 'shelf', view: 'labels', name: '' })}>
          Print labels
        </a>
        <SomethingElse subject="house" says="Add a jar" offer={{ kind: 'jar-found', fixed: {} }} />
      </p>
      {doubted && shelf.taste.length > 0 && <p className="notice">{shelf.says}</p>}
      <section className="below" aria-labelledby="standing">
        <h2 id="standing">In the cold now</h2>
        {shelf.jars.length === 0 && <p className="quiet">No jar stands there.</p>}
        <ByStrain jars={shelf.jars} looks={looks} {...one} />
      </section>
      <section className="below" aria-labelledby="packs">
        <h2 id="packs">Packs</h2>
        <PackList packs={shelf.packs} looks={looks} today={shelf.today} />
      </section>
      <section className="below" aria-labelledby="to-come">
        <h2 id="to-come">To come</h2>
        {next.length === 0 && <p className="quiet">No harvest is planned.</p>}
        <ByStrain jars={next} looks={looks} {...one} />
        {next.length < shelf.toCome.length && (
          <Button className="button shelf-more" onPress={() => setAll(true)}>
            Show all {shelf.toCome.length}
          </Button>
        )}
      </section>
      <section className="below" aria-labelledby="family">
        <h2 id="family">What descends from what</h2>
        <p className="quiet lead-text">
          From left to right the generations. A jar hangs on the thread before the beers that are
          pitched from it; a hollow mark is still to come.
        </p>
        <Family shelf={shelf} looks={looks} lit={null} />
      </section>
    </>
  );
}

function ByStrain(props: {
  jars: readonly StandingJar[];
  looks: ReadonlyMap<string, StrainLook>;
  today: string;
  units: ReturnType<typeof useUnits>[0];
}) {
  const { jars, looks, today, units } = props;
  const strains = [...looks.values()].filter(({ yeast }) =>
    jars.some((jar) => jar.yeast === yeast),
  );
  return strains.map((look) => (
    <section key={look.yeast} className={`strain-shelf hue-${look.hue}`}>
      <StrainHead look={look} />
      <JarList
        label={`Jars of ${look.yeast}`}
        jars={jars.filter((jar) => jar.yeast === look.yeast)}
        today={today}
        units={units}
      />
    </section>
  ));
}
