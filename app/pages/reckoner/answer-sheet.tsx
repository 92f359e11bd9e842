// An answer: sentences first, then figures with how sure they are, then what it all rests on.
import type { Units } from '../../parts/units.ts';
import type { Answered, AnsweredFigure } from '../../queries/questions.ts';
import { figureText, inUnits } from './amounts.ts';

/** The question of units answers in units: its figures are not turned once more. */
const AS_IT_STANDS: Units = { volume: 'metric', gravity: 'sg', colour: 'ebc' };

export function AnswerSheet(props: { answer: Answered; units: Units }) {
  const { answer } = props;
  const units = answer.question === 'units' ? AS_IT_STANDS : props.units;
  const ranges = answer.figures.filter((one) => one.low !== null && one.high !== null);
  const others = answer.figures.filter((one) => !ranges.includes(one));
  return (
    <div className="answer">
      {answer.says.map((sentence) => (
        <p key={sentence} className="says">
          {inUnits(sentence, units)}
        </p>
      ))}
      {ranges.map((one) => (
        <RangePicture key={`${one.name} ${one.unit}`} figure={one} units={units} />
      ))}
      {others.length > 0 && (
        <dl className="facts figures">
          {others.map((one) => (
            <div key={`${one.name} ${one.unit}`}>
              <dt className="field-name">{one.name}</dt>
              <dd>{one.value === null ? 'none' : figureText(one.value, one.unit, units)}</dd>
            </div>
          ))}
        </dl>
      )}
      {answer.caution && (
        <p className="task-caution">
          <strong>Caution.</strong> {answer.caution}
        </p>
      )}
      {answer.beyond.length > 0 && (
        <div className="notice">
          <h3>Beyond what was measured</h3>
          {answer.beyond.map((sentence) => (
            <p key={sentence}>{inUnits(sentence, units)}</p>
          ))}
        </div>
      )}
      <h3>What it rests on</h3>
      <p>{answer.formula}</p>
      <p>Holds for: {answer.range}</p>
      <ul className="how">
        {answer.sources.map((source) => (
          <li key={source}>{source}</li>
        ))}
      </ul>
    </div>
  );
}

const FRAME = { left: 12, right: 300, top: 12, bottom: 34, height: 62 };

/** Low, likely and high of a figure, drawn as on the sheet of a pitch: a band, and a mark where it is likeliest. */
function RangePicture(props: { figure: AnsweredFigure; units: Units }) {
  const { figure, units } = props;
  const { name, unit, value, low, high } = figure;
  if (value === null || low === null || high === null) return null;
  const end = unit === 'share' ? 1 : high * 1.15 || 1;
  const x = (at: number) => FRAME.left + ((FRAME.right - FRAME.left) * at) / end;
  const said = (at: number) => figureText(at, unit, units);
  const words = `${name}: likely ${said(value)}, ${said(low)} to ${said(high)} with 4 chances in 5.`;
  const middle = (FRAME.top + FRAME.bottom) / 2;
  return (
    <figure className="ageing range">
      <svg viewBox={`0 0 312 ${FRAME.height}`} role="img" aria-label={words} className="hue-1">
        <line className="rule" x1={FRAME.left} x2={FRAME.right} y1={middle} y2={middle} />
        <rect
          className="band"
          x={x(low)}
          width={Math.max(1, x(high) - x(low))}
          y={FRAME.top}
          height={FRAME.bottom - FRAME.top}
        />
        <line className="likely" x1={x(value)} x2={x(value)} y1={FRAME.top} y2={FRAME.bottom} />
        <text x={FRAME.left} y={FRAME.bottom + 18}>
          0
        </text>
        <text x={FRAME.right} y={FRAME.bottom + 18} textAnchor="end">
          {said(end)}
        </text>
      </svg>
      <figcaption className="quiet">{words}</figcaption>
    </figure>
  );
}
