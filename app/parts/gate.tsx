// Stands before the whole page: where the server is shut and nobody is signed in, there is only the way in.
import { useQuery } from '@tanstack/react-query';
import { lazy, type ReactNode, Suspense } from 'react';
import { doorsQuery } from '../queries/doors.ts';

const SignInPage = lazy(() => import('../pages/doors/sign-in-page.tsx'));

/** Until the server has said, the page is shown: mostly no password is set, and nothing waits for the answer. */
export function Gate(props: { children: ReactNode }) {
  const doors = useQuery(doorsQuery).data;
  if (!doors?.shut || doors.signedIn) return props.children;
  return (
    <Suspense fallback={null}>
      <SignInPage />
    </Suspense>
  );
}

/** At the foot of every page, where somebody is signed in. */
export function DoorsLink() {
  const doors = useQuery(doorsQuery).data;
  return doors?.signedIn ? (
    <a className="doors-link" href="#/doors">
      Doors
    </a>
  ) : null;
}
