// A new house in three steps: what you brew on, what you brew, what is on the shelf; or all of it from files.
import type { InBook } from '../../parts/book/book-frame.tsx';
import { aNewBrew, aNewJar, aNewTank, aNewYeast } from '../../parts/book/fields.ts';
import { HeadLine } from '../../parts/book/head-line.tsx';
import { BringIn } from '../../parts/book/import/bring-in.tsx';
import { Ledger } from '../../parts/book/ledger.tsx';
import { WeekDays } from '../../parts/book/week-days.tsx';
import { count } from '../../parts/words.ts';
import { hashOf } from '../../router.ts';
import { StylesList } from '../brews/brews-page.tsx';
import { styleHints } from '../brews/style-hints.ts';

const STEPS = [
  { step: '1', says: 'What you brew on' },
  { step: '2', says: 'What you brew' },
  { step: '3', says: 'What is on the shelf' },
] as const;
type Step = (typeof STEPS)[number]['step'] | 'files';

export const isStep = (text: string): text is Step =>
  text === 'files' || STEPS.some(({ step }) => step === text);

export function Steps(props: InBook & { step: Step }) {
  const { step } = props;
  const at = STEPS.findIndex((one) => one.step === step);
  const next = STEPS[at + 1];
  return (
    <>
      <h1 className="season-title">
        {step === 'files' ? 'Bring a season in' : `${at + 1}. ${STEPS[at]?.says}`}
      </h1>
      <nav aria-label="Steps" className="steps">
        {STEPS.map((one) => (
          <a
            key={one.step}
            href={hashOf({ page: 'start', step: one.step })}
            {...(one.step === step ? { 'aria-current': 'step' as const } : {})}
          >
            {one.step}. {one.says}
          </a>
        ))}
      </nav>
      {step === '1' && <BrewOn {...props} />}
      {step === '2' && <Brew {...props} />}
      {step === '3' && <Shelf {...props} />}
      {step === 'files' && <Files {...props} />}
      <p className="merge-acts">
        {next && step !== 'files' && (
          <a className="button next" href={hashOf({ page: 'start', step: next.step })}>
            Next: {next.says.toLowerCase()}
          </a>
        )}
        {step === '3' && <span>That is all. 'Begin the season' below saves it and plans it.</span>}
      </p>
    </>
  );
}

function Lines(props: InBook & { places: readonly string[] }) {
  return (
    <div className="head-lines">
      {props.places.map((place) => (
        <HeadLine key={place} open={props.open} checked={props.checked} place={place} />
      ))}
    </div>
  );
}

function BrewOn(props: InBook) {
  const { open, checked } = props;
  return (
    <>
      <Lines {...props} places={['name', 'kind', 'from', 'to', 'timeZone', 'currency']} />
      <div className="head-lines wide">
        <WeekDays open={open} checked={checked} place="brewDays" />
      </div>
      <h2 className="step-part">Tanks</h2>
      <Ledger list="tanks" open={open} checked={checked} makes={aNewTank} />
    </>
  );
}

function Brew(props: InBook) {
  const { open, checked } = props;
  const first = String(open.book.lists.yeasts[0]?.row.yeast ?? '');
  return (
    <>
      <h2>Yeasts</h2>
      <p className="quiet">First the strains that you brew with, then the beers.</p>
      <Ledger list="yeasts" open={open} checked={checked} makes={aNewYeast} />
      <h2 className="step-part">Beers</h2>
      <StylesList />
      <Ledger
        list="brews"
        open={open}
        checked={checked}
        hints={styleHints}
        makes={(name) => aNewBrew(name, first)}
      />
      <BringIn book={open.book} list="brews" />
    </>
  );
}

function Shelf(props: InBook) {
  const { open, checked, today } = props;
  const first = String(open.book.lists.yeasts[0]?.row.yeast ?? '');
  return (
    <>
      <Lines {...props} places={['store.tempC', 'store.maxJars', 'store.jarMl']} />
      <h2 className="step-part">Jars of slurry</h2>
      <p className="quiet">None is fine: the season then begins with fresh packs.</p>
      <Ledger
        list="jars"
        open={open}
        checked={checked}
        makes={(name) => aNewJar(name, first, today)}
      />
      <h2 className="step-part">Packs</h2>
      {open.book.lists.yeasts.length === 0 ? (
        <p className="quiet">There is no yeast in the house yet: see step 2.</p>
      ) : (
        <>
          <p className="quiet">'Packs here' says how many lie in the cold already.</p>
          <Ledger list="yeasts" open={open} checked={checked} makes={aNewYeast} />
        </>
      )}
    </>
  );
}

function Files(props: InBook) {
  const { lists } = props.open.book;
  const has = (['brews', 'tanks', 'yeasts', 'jars'] as const).map((list) =>
    count(lists[list].length, list.slice(0, -1)),
  );
  return (
    <>
      <p className="lead-text">
        Drop house.json, brews.csv, tanks.csv, yeasts.csv and jars.csv together, or one after the
        other. So far: {has.join(', ')}.
      </p>
      <BringIn book={props.open.book} list="brews" open />
      <p className="quiet below-ledger">
        What the files do not say is asked in the three steps above; look through them before you
        begin.
      </p>
    </>
  );
}
