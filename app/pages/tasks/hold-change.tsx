// A change of the draft that is not wanted: the brew is held to the day, tank or yeast it has, and the rest planned again.
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Button } from 'react-aria-components';
import type { Changes } from '../../../planner/index.ts';
import { ErrorNotice } from '../../parts/failed.tsx';
import { tellNews } from '../../queries/news.ts';
import { planQuery } from '../../queries/plan.ts';
import { holdNews } from './hold.ts';

type Change = Changes['changes'][number];

const WHAT: Readonly<Partial<Record<Change['kind'], string>>> = {
  moved: 'its day',
  tank: 'its tank',
  source: 'its yeast',
  yeast: 'its yeast',
};

export function HoldChange(props: { change: Change; busy: boolean }) {
  const { change, busy } = props;
  const tell = useMutation(tellNews(useQueryClient()));
  const inForce = useQuery(planQuery).data?.plan ?? null;
  const news = inForce === null ? null : holdNews(change, inForce);
  // What a hard rule forces would only be asked for in vain.
  if (news === null || change.rule !== null) return null;
  return (
    <>
      <Button
        className="button small"
        isDisabled={busy || tell.isPending}
        aria-label={`Keep ${WHAT[change.kind] ?? 'it'}: ${change.says}`}
        onPress={() => tell.mutate(news)}
      >
        Keep {WHAT[change.kind] ?? 'it'}
      </Button>
      {tell.isError && <ErrorNotice error={tell.error} />}
    </>
  );
}
