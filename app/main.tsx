// Where the page begins.
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { Gate } from './parts/gate.tsx';
import { watchDoors } from './queries/doors.ts';
import { firstAnswers } from './queries/first-answers.ts';
import { chooseFirstPage } from './router.ts';
import { Sheet } from './sheet.tsx';
import './styles/tokens.css';
import './styles/page.css';
import './styles/season.css';
import './styles/picture.css';
import './styles/moving.css';
import './styles/pitch.css';
import './styles/tasks.css';
import './styles/draft.css';
import './styles/slip.css';
import './styles/reckoner.css';
import './styles/doors.css';
import './styles/print.css';

const cache = new QueryClient({
  // The server may stand on this machine or in the house: whether the internet is there says nothing.
  defaultOptions: {
    queries: { staleTime: 15_000, retry: 1, networkMode: 'always' },
    mutations: { networkMode: 'always' },
  },
});

watchDoors(cache);
chooseFirstPage();
const place = document.getElementById('page');
// Not awaited here: with that, the build would cut what is shared by all pages into dozens of files.
if (place) void firstAnswers(cache).then(() => draw(place));

function draw(into: HTMLElement): void {
  createRoot(into).render(
    <StrictMode>
      <QueryClientProvider client={cache}>
        <Gate>
          <Sheet />
        </Gate>
      </QueryClientProvider>
    </StrictMode>,
  );
}
