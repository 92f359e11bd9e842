// The way to everything that can be told beside a tick: a quiet button; its slip is brought in when it is opened.
import { lazy, Suspense } from 'react';
import { Button, Dialog, DialogTrigger, Modal, ModalOverlay } from 'react-aria-components';
import type { Subject } from './tell/offers.ts';

const TellSheet = lazy(() => import('./tell/tell-sheet.tsx'));

export function SomethingElse(props: { subject: Subject; says: string; about?: string }) {
  const { subject, says, about } = props;
  return (
    <DialogTrigger>
      <Button
        className="button plain"
        {...(about === undefined ? {} : { 'aria-label': `${says}: ${about}` })}
      >
        {says}
      </Button>
      <ModalOverlay className="veil" isDismissable>
        <Modal className="slip">
          <Dialog aria-label={says}>
            {({ close }) => (
              <Suspense fallback={<p className="quiet waiting">Bringing the list …</p>}>
                <TellSheet subject={subject} close={close} />
              </Suspense>
            )}
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}
