// The reckoner: one question at a time, for a brewer at the bench who needs no season to ask.
import { useSuspenseQuery } from '@tanstack/react-query';
import { questionsQuery } from '../../queries/questions.ts';
import { hashOf } from '../../router.ts';
import { QuestionSheet } from './question-sheet.tsx';

export default function ReckonerPage(props: { question: string }) {
  const { questions } = useSuspenseQuery(questionsQuery).data;
  const question =
    props.question === '' ? questions[0] : questions.find((one) => one.id === props.question);
  return (
    <>
      <h1 className="season-title">Reckoner</h1>
      <p className="lead-text">
        One question at a time, answered by the same science as the plan. Nothing here changes the
        season.
      </p>
      <div className="reckoner">
        <nav aria-label="Questions">
          <ul className="askable">
            {questions.map(({ id, title }) => (
              <li key={id}>
                <a
                  href={hashOf({ page: 'reckoner', question: id })}
                  {...(id === question?.id ? { 'aria-current': 'page' as const } : {})}
                >
                  {title}
                </a>
              </li>
            ))}
          </ul>
        </nav>
        {question ? (
          <QuestionSheet key={question.id} question={question} />
        ) : (
          <p>There is no such question. Choose one of those that are listed.</p>
        )}
      </div>
    </>
  );
}
