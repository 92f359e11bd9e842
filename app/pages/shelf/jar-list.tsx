// Jars of one strain, a line each: code, what it is, how much, how alive, for whom, use-by, and its time in the cold as a thread.
import type { StandingJar } from '../../../planner/index.ts';
import { distance, fullDay, shortDay } from '../../parts/days.ts';
import { millilitres, type Units } from '../../parts/units.ts';
import { hashOf } from '../../router.ts';
import { ageWords, cellsWords, goesWords, ribbonOf, shareWords } from './jar-words.ts';

export function JarList(props: {
  label: string;
  jars: readonly StandingJar[];
  today: string;
  units: Units;
}) {
  const { label, jars, today, units } = props;
  return (
    <ul className="jars" aria-label={label}>
      {jars.map((jar) => (
        <JarLine key={`${jar.of.kind} ${jar.code}`} jar={jar} today={today} units={units} />
      ))}
    </ul>
  );
}

const DOUBT = { sound: '', watch: 'On watch', suspect: 'Suspect' } as const;

function JarLine(props: { jar: StandingJar; today: string; units: Units }) {
  const { jar, today, units } = props;
  const toCome = jar.filledOn > today || jar.alive === null;
  const over = jar.useBy < today;
  return (
    <li className={`shelf-jar ${jar.state}`}>
      <a className="lid-code" href={jarHash(jar)} aria-label={`Jar ${jar.code}`}>
        {jar.code}
      </a>
      <p className="jar-what">
        {jar.from === null
          ? 'From before this season'
          : jar.ofStarter
            ? `Kept from the starter of ${jar.from}`
            : `Out of ${jar.from}`}
        , generation {jar.generation}
        <span className="quiet">
          {toCome && jar.from !== null
            ? `to be filled ${shortDay(jar.filledOn)}`
            : ageWords(jar, today)}
        </span>
      </p>
      <p className="jar-much">
        {millilitres(jar.ml, units)}
        {jar.cellsB !== null && <span className="quiet">{cellsWords(jar.cellsB)}</span>}
      </p>
      <AliveCell jar={jar} today={today} />
      <p className="jar-goes">
        {DOUBT[jar.state] !== '' && <strong className="red">{DOUBT[jar.state]}. </strong>}
        {goesWords(jar)}
        <span className={over ? 'red' : 'quiet'}>
          use by {fullDay(jar.useBy)}
          {over ? `, ${distance(today, jar.useBy)}` : ''}
        </span>
      </p>
    </li>
  );
}

/** Where a jar's own page is. */
export const jarHash = (jar: Pick<StandingJar, 'of' | 'code'>): string =>
  jar.of.kind === 'jar'
    ? hashOf({ page: 'shelf', view: 'jar', name: jar.of.jar })
    : hashOf({ page: 'shelf', view: 'code', name: jar.code });

const WIDTH = 150;

function AliveCell(props: { jar: StandingJar; today: string }) {
  const { jar, today } = props;
  const ribbon = ribbonOf(jar, today, WIDTH, 9);
  const on = jar.alive?.on;
  return (
    <div className="jar-alive">
      {ribbon && (
        <svg
          className="jar-thread"
          viewBox={`-1 0 ${WIDTH + 6} 18`}
          preserveAspectRatio="xMinYMid"
          aria-hidden="true"
        >
          <line className="rule" x1="0" x2={WIDTH} y1="9" y2="9" />
          <path className="ribbon" d={ribbon.body} />
          <line className="today" x1={ribbon.todayX} x2={ribbon.todayX} y1="0" y2="18" />
          {ribbon.enters !== null && (
            <circle className="enters" cx={ribbon.enters} cy="9" r="3.5" />
          )}
        </svg>
      )}
      <p>
        {jar.alive !== null && (
          <>
            {shareWords(jar.alive.share)} alive{' '}
            {on === today ? 'today' : `on ${shortDay(on ?? today)}`}
          </>
        )}
        {jar.aliveThen !== null && jar.leavesOn !== null && (
          <span className={jar.alive === null ? '' : 'then'}>
            {shareWords(jar.aliveThen)}
            {jar.alive === null ? ' alive' : ''} on {shortDay(jar.leavesOn)}
          </span>
        )}
        {jar.alive === null && jar.aliveThen === null && (
          <span className="quiet">share alive is told by the next plan</span>
        )}
      </p>
    </div>
  );
}
