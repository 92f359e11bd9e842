// The house: what it brews on and when, its strains and its cold store, and by which rules it is planned.
import { BookFrame, type InBook } from '../../parts/book/book-frame.tsx';
import { aNewTank, aNewYeast } from '../../parts/book/fields.ts';
import { HeadLine } from '../../parts/book/head-line.tsx';
import { Ledger } from '../../parts/book/ledger.tsx';
import { WeekDays } from '../../parts/book/week-days.tsx';
import { UnitsChoice } from '../../parts/units-choice.tsx';
import '../../styles/house.css';
import { hashOf } from '../../router.ts';
import { ClosedDays } from './closed-days.tsx';
import { Rules } from './rules.tsx';

export default function HousePage() {
  return <BookFrame>{(book) => <House {...book} />}</BookFrame>;
}

export function HeadLines(props: InBook & { places: readonly string[] }) {
  return (
    <div className="head-lines">
      {props.places.map((place) => (
        <HeadLine key={place} open={props.open} checked={props.checked} place={place} />
      ))}
    </div>
  );
}

function House(props: InBook) {
  const { open, checked } = props;
  return (
    <>
      <h1 className="season-title">The house</h1>
      <p className="lead-text">
        What the plan knows of your brewery. What you write stays in pencil until you save it.
      </p>
      <section className="below" aria-labelledby="season">
        <h2 id="season">The season</h2>
        <HeadLines {...props} places={['name', 'kind', 'from', 'to', 'timeZone', 'currency']} />
      </section>
      <section className="below" aria-labelledby="days">
        <h2 id="days">Days</h2>
        <div className="head-lines wide">
          {['brewDays', 'workDays', 'starterDays'].map((place) => (
            <WeekDays key={place} open={open} checked={checked} place={place} />
          ))}
        </div>
        <HeadLines {...props} places={['brewsPerDay', 'brewLengthL']} />
        <ClosedDays {...props} />
      </section>
      <section className="below" aria-labelledby="tanks">
        <h2 id="tanks">Tanks</h2>
        <Ledger list="tanks" open={open} checked={checked} makes={aNewTank} />
        <HeadLines {...props} places={['conditioningRoomL']} />
      </section>
      <section className="below" aria-labelledby="yeasts">
        <h2 id="yeasts">Yeasts</h2>
        <Ledger list="yeasts" open={open} checked={checked} makes={aNewYeast} />
        <HeadLines {...props} places={['orderLeadDays', 'packAgeOnArrivalDays', 'deliveryCost']} />
      </section>
      <section className="below" aria-labelledby="store">
        <h2 id="store">Cold store and starters</h2>
        <HeadLines
          {...props}
          places={[
            'store.tempC',
            'store.maxJars',
            'store.jarMl',
            'store.settleDays',
            'starterGear.vessels',
            'starterGear.maxLitres',
            'starterGear.stirred',
          ]}
        />
      </section>
      <section className="below" aria-labelledby="units">
        <h2 id="units">Units</h2>
        <p className="quiet">For this browser; the plan itself stays in litres, °C, SG and EBC.</p>
        <div className="merge-acts">
          <UnitsChoice />
        </div>
      </section>
      <Rules {...props} />
      <section className="below" aria-labelledby="another">
        <h2 id="another">Another season</h2>
        <p>
          <a href={hashOf({ page: 'start', step: '' })}>
            Begin a new house or season, or bring one in
          </a>
        </p>
      </section>
    </>
  );
}
