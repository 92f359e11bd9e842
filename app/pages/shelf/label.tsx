// One label: the code, what will be in the jar, for whom, use-by, blank lines for mL and day, the caution, and a code for the phone.
import type { StandingJar } from '../../../planner/index.ts';
import { fullDay, shortDay } from '../../parts/days.ts';
import ScanCode from '../subscribe/scan-code.tsx';
import { jarHash } from './jar-list.tsx';

/** The usual caution of the trade, as the harvest's task has it in full; local codes and licensed practice go first. */
export const LABEL_CAUTION =
  'Yeast makes gas, in the cold too: a closed jar can burst. Lid loose, open slowly, face away. Local codes go first.';

export function LabelOf(props: { jar: StandingJar; letter: string; base: string | null }) {
  const { jar, letter, base } = props;
  const goes =
    jar.for !== null && jar.leavesOn !== null
      ? `for ${jar.for}, ${shortDay(jar.leavesOn)}`
      : jar.untilPassed !== undefined
        ? `reserve until ${jar.untilPassed} is passed`
        : jar.kept
          ? 'spare'
          : 'for no brew';
  return (
    <article className="label" aria-label={`Label of jar ${jar.code}`}>
      <div className="label-words">
        <p className="label-code">{jar.code}</p>
        <p className="label-strain">
          {letter} · {jar.yeast} · generation {jar.generation}
        </p>
        <p>
          {jar.from === null
            ? 'harvested'
            : jar.ofStarter
              ? `starter of ${jar.from},`
              : `out of ${jar.from},`}{' '}
          {shortDay(jar.filledOn)}
        </p>
        <p>{goes}</p>
        <p className="label-use">use by {fullDay(jar.useBy)}</p>
        <p className="label-blanks">
          <span>mL</span>
          <span className="blank" />
          <span>date</span>
          <span className="blank" />
        </p>
      </div>
      {base !== null && (
        <ScanCode
          text={`${base}/${jarHash(jar)}`}
          label={`Code that opens the page of jar ${jar.code}`}
        />
      )}
      <p className="label-caution">{LABEL_CAUTION}</p>
    </article>
  );
}
