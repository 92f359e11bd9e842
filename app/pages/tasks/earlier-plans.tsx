// Plans that were in force, newest first, each to be put back: as a draft, with all that has happened since.
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Button, Heading } from 'react-aria-components';
import { ErrorNotice } from '../../parts/failed.tsx';
import { historyQuery, putBack } from '../../queries/history.ts';
import { planQuery } from '../../queries/plan.ts';
import { earlierWords, momentWords } from './earlier.ts';

/** Older ones are rarely wanted; the list says how many there are. */
const SHOWN = 12;

export default function EarlierPlans(props: { close: () => void }) {
  const { close } = props;
  const history = useQuery(historyQuery);
  const inForce = useQuery(planQuery).data?.plan ?? null;
  const back = useMutation(putBack(useQueryClient()));
  const plans = history.data?.plans ?? [];
  return (
    <div className="slip-form">
      <Heading slot="title">Earlier plans</Heading>
      <p className="quiet">
        A plan that is put back becomes the draft, with all that has happened since; nothing is in
        force until you adopt it.
      </p>
      {history.isError && <ErrorNotice error={history.error} />}
      {back.isError && <ErrorNotice error={back.error} />}
      {plans.length === 1 && <p>There is none before the plan in force.</p>}
      <ol className="told earlier">
        {plans.slice(0, SHOWN).map((one) => (
          <li key={one.id}>
            <span className="figures">{earlierWords(one, inForce)}</span>
            {one.inForce ? (
              <span className="quiet">in force</span>
            ) : (
              <Button
                className="button small"
                isDisabled={back.isPending}
                aria-label={`Put it back: the plan of ${momentWords(one.inForceAt)}`}
                onPress={() => back.mutate(one.id, { onSuccess: close })}
              >
                Put it back
              </Button>
            )}
          </li>
        ))}
      </ol>
      {plans.length > SHOWN && (
        <p className="quiet">{plans.length - SHOWN} older ones are not shown.</p>
      )}
      <div className="slip-acts">
        <Button className="button plain" onPress={close}>
          Close
        </Button>
      </div>
    </div>
  );
}
