// The way to everything that can be told beside a tick: a quiet button; its slip is brought in when it is opened.
import { lazy, type ReactNode, Suspense } from 'react';
import { Button, Dialog, DialogTrigger, Modal, ModalOverlay } from 'react-aria-components';
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
    <DialogTrigger>
      <Button
        className={offer === undefined ? 'button plain' : 'button'}
        {...(about === undefined ? {} : { 'aria-label': `${says}: ${about}` })}
      >
        {says}
      </Button>
      <ModalOverlay className="veil" isDismissable>
        <Modal className="slip">
          <Dialog aria-label={says}>
            {({ close }) => (
              <Suspense fallback={<p className="quiet waiting">Bringing the list …</p>}>
                <TellSheet
                  subject={subject}
                  close={close}
                  entails={entails}
                  {...(offer === undefined ? {} : { offer })}
                />
              </Suspense>
            )}
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}
