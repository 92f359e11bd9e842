// What was told lately, each with a way to take it back.
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Button } from 'react-aria-components';
import { ErrorNotice } from '../../parts/failed.tsx';
import { tellNews } from '../../queries/news.ts';
import { recordQuery } from '../../queries/record.ts';
import { tasksQuery } from '../../queries/tasks.ts';
import { newsWords, standing } from './told.ts';

const SHOWN = 6;

export function ToldLately() {
  const tell = useMutation(tellNews(useQueryClient()));
  const entries = useQuery(recordQuery).data?.entries ?? [];
  const tasks = useQuery(tasksQuery).data?.tasks ?? [];
  const shown = standing(entries).toReversed().slice(0, SHOWN);
  if (shown.length === 0) return null;
  const titleOf = (key: string) => tasks.find((task) => task.key === key)?.title ?? null;
  return (
    <section className="task-group" aria-labelledby="told">
      <h2 className="task-group-title" id="told">
        Told lately
      </h2>
      <ul className="told">
        {shown.map((entry) => {
          const words = newsWords(entry, titleOf);
          return (
            <li key={entry.no}>
              <span>{words}</span>
              <Button
                className="button small"
                isDisabled={tell.isPending}
                aria-label={`Take back: ${words}`}
                onPress={() => tell.mutate({ kind: 'undone', entry: entry.no })}
              >
                Take back
              </Button>
            </li>
          );
        })}
      </ul>
      {tell.isError && <ErrorNotice error={tell.error} />}
    </section>
  );
}
