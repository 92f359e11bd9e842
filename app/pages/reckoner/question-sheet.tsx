// One question: the form that its fields make, and its answer below.
import { useMutation } from '@tanstack/react-query';
import { useId, useState } from 'react';
import { Button, FieldError, Form, Input, Label, Text, TextField } from 'react-aria-components';
import { Refused } from '../../client.ts';
import { ErrorNotice } from '../../parts/failed.tsx';
import { type Units, useUnits } from '../../parts/units.ts';
import { Choices } from '../../parts/units-choice.tsx';
import { wayOf } from '../../parts/ways.ts';
import { type AskedField, type AskedQuestion, askQuestion } from '../../queries/questions.ts';
import { firstText, givenOf, rewritten, unitOf } from './amounts.ts';
import { AnswerSheet } from './answer-sheet.tsx';

type Written = { units: Units; texts: Readonly<Record<string, string>> };

/** What is written in the form; it follows the units that are chosen at the foot of the sheet. */
function useWritten(fields: readonly AskedField[], units: Units) {
  const [written, setWritten] = useState<Written>(() => ({
    units,
    texts: Object.fromEntries(fields.map((field) => [field.name, firstText(field, units)])),
  }));
  if (written.units !== units) {
    const texts = fields.map((field) => [
      field.name,
      rewritten(written.texts[field.name] ?? '', field, written.units, units),
    ]);
    setWritten({ units, texts: Object.fromEntries(texts) });
  }
  const write = (name: string, text: string) =>
    setWritten({ units, texts: { ...written.texts, [name]: text } });
  return { texts: written.texts, write };
}

export function QuestionSheet(props: { question: AskedQuestion }) {
  const { question } = props;
  const [units] = useUnits();
  const { texts, write } = useWritten(question.fields, units);
  const ask = useMutation(askQuestion(question.id));
  const problems = ask.error instanceof Refused ? ask.error.problems : [];
  const placed = problems.filter(({ path }) => question.fields.some(({ name }) => name === path));
  const title = useId();
  return (
    <section className="asked" aria-labelledby={title}>
      <h2 id={title}>{question.title}</h2>
      <Form
        className="question-form"
        validationBehavior="aria"
        onSubmit={(event) => {
          event.preventDefault();
          ask.mutate(givenOf(question.fields, texts, units));
        }}
      >
        {question.fields.map((field) => (
          <FieldOf
            key={field.name}
            field={field}
            units={units}
            text={texts[field.name] ?? ''}
            write={(text) => {
              write(field.name, text);
              if (ask.isError) ask.reset();
            }}
            complaint={placed
              .filter(({ path }) => path === field.name)
              .map(({ message, remedy }) => `${message} ${remedy}`)
              .join(' ')}
          />
        ))}
        <Button type="submit" className="button first" isDisabled={ask.isPending}>
          Reckon
        </Button>
      </Form>
      {ask.isError && placed.length < Math.max(1, problems.length) && (
        <ErrorNotice error={ask.error} />
      )}
      <div aria-live="polite">
        {ask.isError && placed.length > 0 && (
          <p className="notice">No answer: look at what is marked above.</p>
        )}
        {ask.isSuccess && <AnswerSheet answer={ask.data} units={units} />}
      </div>
      {!ask.isSuccess && (
        <p className="quiet formula">
          {question.formula} {question.range}
        </p>
      )}
    </section>
  );
}

type FieldProps = {
  field: AskedField;
  units: Units;
  text: string;
  write: (text: string) => void;
  complaint: string;
};

function FieldOf(props: FieldProps) {
  const { field, text, write, complaint } = props;
  if (field.kind === 'choice' || field.kind === 'yesNo') {
    const options = field.kind === 'yesNo' ? ['yes', 'no'] : field.options;
    return (
      <div className="field">
        <span aria-hidden="true">{field.label}</span>
        <Choices
          label={field.label}
          value={text}
          options={options.map((value) => ({ value, says: value }))}
          choose={write}
        />
        <span className="quiet">{field.says}</span>
        {complaint !== '' && <span className="red">{complaint}</span>}
      </div>
    );
  }
  const { unit } = wayOf(unitOf(field), props.units);
  const named = field.kind === 'share' ? '0 to 1' : unit;
  // 'Days in the cold' need not be told that they are days.
  const word = named.replace(/s$/, '').toLowerCase();
  const saysIt =
    named === '' ||
    field.label
      .toLowerCase()
      .split(/[\s]+/)
      .some((one) => one.replace(/s$/, '') === word);
  return (
    <TextField
      className="field"
      value={text}
      onChange={write}
      isRequired={field.required}
      isInvalid={complaint !== ''}
      validationBehavior="aria"
    >
      <Label>{saysIt ? field.label : `${field.label}, ${named}`}</Label>
      <Input className="input" inputMode={field.kind === 'counts' ? 'text' : 'decimal'} />
      <Text slot="description" className="quiet">
        {field.says}
        {field.required ? '' : ' May be left out.'}
      </Text>
      <FieldError className="red">{complaint}</FieldError>
    </TextField>
  );
}
