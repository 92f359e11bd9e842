// The season's sheet: what is next, what it keeps, and the picture of it all.
import { useSuspenseQueries } from '@tanstack/react-query';
import { useMemo, useState } from 'react';
import { Button, Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import type { House, Plan } from '../../../planner/index.ts';
import { fullDay } from '../../parts/days.ts';
import { strainLooks } from '../../parts/strains.ts';
import { useUnits } from '../../parts/units.ts';
import { Choices } from '../../parts/units-choice.tsx';
import { houseQuery } from '../../queries/house.ts';
import { type PlanInForce, planQuery } from '../../queries/plan.ts';
import { ChainNotes, StrainKey } from './notes.tsx';
import { SeasonPicture } from './picture.tsx';
import { ReadingLine } from './reading-line.tsx';
import { SeasonHead } from './season-head.tsx';
import { SeasonTable } from './season-table.tsx';
import { Broken, LeftOut, PlanNotes } from './troubles.tsx';
import { weave } from './weave.ts';

export function SeasonPage() {
  const [plan, house] = useSuspenseQueries({ queries: [planQuery, houseQuery] });
  if (!house.data.house) return <p>There is no house yet. Put a season in to begin.</p>;
  if (!plan.data.plan) return <NoPlanYet house={house.data.house} />;
  return <Season inForce={plan.data} plan={plan.data.plan} house={house.data.house} />;
}

function NoPlanYet(props: { house: House }) {
  return (
    <>
      <h1 className="season-title">{props.house.name}</h1>
      <p className="quiet">No plan is in force yet: the first one is being worked out.</p>
    </>
  );
}

/** Days of a view, by its name. */
const VIEW_DAYS = { month: 35, week: 9 } as const;
type View = 'season' | 'month' | 'week';

function Season(props: { inForce: PlanInForce; plan: Plan; house: House }) {
  const { plan, house, inForce } = props;
  const woven = useMemo(() => weave(plan, house), [plan, house]);
  const looks = useMemo(() => strainLooks(plan, house), [plan, house]);
  const [units] = useUnits();
  const [view, setView] = useState<View>('season');
  const [active, setActive] = useState<string | null>(null);
  const width = typeof window === 'undefined' ? 1200 : Math.min(window.innerWidth, 2400) - 160;
  const narrow = width < 560;
  const fit = view === 'season' && !narrow;
  const days = view === 'week' ? VIEW_DAYS.week : VIEW_DAYS.month;
  const pxPerDay = fit
    ? null
    : Math.max(view === 'season' ? 5 : 20, width / (view === 'season' ? 90 : days));
  const brew = plan.brews.find((one) => one.brew === active) ?? null;

  return (
    <>
      <h1 className="season-title">{house.name}</h1>
      <p className="quiet">
        The season from {fullDay(house.from)} to {fullDay(house.to)}
      </p>
      <SeasonHead plan={plan} house={house} inForce={inForce} />
      <Broken plan={plan} />
      <Tabs defaultSelectedKey="picture">
        <div className="season-bar">
          <TabList aria-label="How the season is shown" className="tabs">
            <Tab id="picture">Picture</Tab>
            <Tab id="table">Table</Tab>
          </TabList>
          <StrainKey looks={looks} />
        </div>
        <TabPanel id="picture">
          <div className="season-bar no-print">
            <Choices<View>
              label="How much of the season is seen"
              value={view}
              options={[
                { value: 'season', says: 'Season' },
                { value: 'month', says: 'Month' },
                { value: 'week', says: 'Week' },
              ]}
              choose={setView}
            />
            <PanButtons />
          </div>
          <SeasonPicture
            house={house}
            woven={woven}
            looks={looks}
            units={units}
            pxPerDay={pxPerDay}
            active={active}
            setActive={setActive}
          />
          <ReadingLine brew={brew} house={house} woven={woven} units={units} />
        </TabPanel>
        <TabPanel id="table">
          <SeasonTable plan={plan} woven={woven} units={units} />
        </TabPanel>
      </Tabs>
      <LeftOut plan={plan} />
      <ChainNotes woven={woven} looks={looks} setActive={setActive} />
      <PlanNotes plan={plan} />
    </>
  );
}

/** Moves the picture by half of what is seen, for those who neither drag nor swipe. */
function PanButtons() {
  const pan = (way: -1 | 1) => {
    const scroller = document.querySelector('.scroller');
    scroller?.scrollBy({ left: (way * scroller.clientWidth) / 2, behavior: 'smooth' });
  };
  return (
    <span>
      <Button className="button plain small" onPress={() => pan(-1)}>
        ← earlier
      </Button>
      <Button className="button plain small" onPress={() => pan(1)}>
        later →
      </Button>
    </span>
  );
}
