// The way to everything that can be told beside a tick.
import { lazy, type ReactNode } from 'react';
import { LazySlip } from './lazy-slip.tsx';
import type { Offer, Subject } from './tell/offers.ts';

const TellSheet = lazy(() => import('./tell/tell-sheet.tsx'));

export function SomethingElse(props: {
  subject: Subject;
  says: string;
  about?: string;
  /** One piece of news alone, and what telling it comes to. */
  offer?: Offer;
  entails?: ReactNode;
}) {
  const { subject, says, about, offer, entails } = props;
  return (
    <LazySlip
      says={says}
      className={offer === undefined ? 'button plain' : 'button'}
      {...(about === undefined ? {} : { about })}
    >
      {(close) => (
        <TellSheet
          subject={subject}
          close={close}
          entails={entails}
          {...(offer === undefined ? {} : { offer })}
        />
      )}
    </LazySlip>
  );
}
