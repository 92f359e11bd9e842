// A quiet button and the slip that it opens, whose insides are brought in only then.
import { type ReactNode, Suspense } from 'react';
import { Button, Dialog, DialogTrigger, Modal, ModalOverlay } from 'react-aria-components';

export function LazySlip(props: {
  says: string;
  /** What it is about, for those who hear the button alone. */
  about?: string;
  className?: string;
  children: (close: () => void) => ReactNode;
}) {
  const { says, about, className = 'button plain', children } = props;
  return (
    <DialogTrigger>
      <Button
        className={className}
        {...(about === undefined ? {} : { 'aria-label': `${says}: ${about}` })}
      >
        {says}
      </Button>
      <ModalOverlay className="veil" isDismissable>
        <Modal className="slip">
          <Dialog aria-label={says}>
            {({ close }) => (
              <Suspense fallback={<p className="quiet waiting">Bringing the list …</p>}>
                {children(close)}
              </Suspense>
            )}
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}
