// The season's sheet: what is next, what it keeps, and the picture of it all.
import { useSuspenseQueries } from '@tanstack/react-query';
import { useMemo, useState } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import type { House, Plan } from '../../../planner/index.ts';
import { fullDay, isoDay } from '../../parts/days.ts';
import { DecisionNotice, useDecision } from '../../parts/decision.tsx';
import { type StrainLook, strainLooks } from '../../parts/strains.ts';
import { type Units, useUnits } from '../../parts/units.ts';
import { houseQuery } from '../../queries/house.ts';
import { type PlanInForce, planQuery } from '../../queries/plan.ts';
import { useTrial } from '../../queries/trial.ts';
import { type Active, createActive } from './active.ts';
import { type Moving, samePlace } from './moving.ts';
import { ChainNotes, StrainKey } from './notes.tsx';
import { SeasonPicture } from './picture.tsx';
import { CarryingLine, ReadingLine } from './reading-line.tsx';
import { SeasonHead } from './season-head.tsx';
import { SeasonTable } from './season-table.tsx';
import { Broken, LeftOut, PlanNotes } from './troubles.tsx';
import { ViewBar } from './view-bar.tsx';
import { type Weave, weave } from './weave.ts';
import type { Zoom } from './zoom.ts';

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

function Season(props: { inForce: PlanInForce; plan: Plan; house: House }) {
  const { plan, house, inForce } = props;
  const [active] = useState(createActive);
  const woven = useMemo(() => weave(plan, house), [plan, house]);
  const looks = useMemo(() => strainLooks(plan, house), [plan, house]);
  const parts = { inForce, plan, house, woven, looks, active };
  return (
    <>
      <h1 className="season-title">{house.name}</h1>
      <p className="quiet">
        The season from {fullDay(house.from)} to {fullDay(house.to)}
      </p>
      <SeasonHead plan={plan} house={house} inForce={inForce} />
      <Broken plan={plan} />
      <Pictured {...parts} />
      <LeftOut plan={plan} />
      <ChainNotes woven={woven} looks={looks} setActive={active.set} />
      <PlanNotes plan={plan} />
    </>
  );
}

type Parts = {
  inForce: PlanInForce;
  plan: Plan;
  house: House;
  woven: Weave;
  looks: ReadonlyMap<string, StrainLook>;
  active: Active;
};

/** The picture with all that belongs to it, or the table that says the same. */
function Pictured(props: Parts) {
  const [units] = useUnits();
  return (
    <Tabs defaultSelectedKey="picture">
      <div className="season-bar">
        <TabList aria-label="How the season is shown" className="tabs">
          <Tab id="picture">Picture</Tab>
          <Tab id="table">Table</Tab>
        </TabList>
        <StrainKey looks={props.looks} />
      </div>
      <TabPanel id="picture">
        <PictureSheet {...props} units={units} />
      </TabPanel>
      <TabPanel id="table">
        <SeasonTable plan={props.plan} woven={props.woven} units={units} />
      </TabPanel>
    </Tabs>
  );
}

/** What moves with the hand is held here and no higher: little else is then drawn anew with it. */
function PictureSheet(props: Parts & { units: Units }) {
  const { plan, house, inForce, woven, looks, active, units } = props;
  const [zoom, setZoom] = useState<Zoom>('season');
  const [byTouch, setByTouch] = useState(false);
  const [moving, setMoving] = useState<Moving | null>(null);
  const decision = useDecision();
  const stays = moving === null || samePlace(moving.from, moving.to);
  const move = moving && {
    brew: moving.brew,
    day: isoDay(moving.to.day),
    tank: moving.to.tank,
  };
  const { trial, error } = useTrial(inForce.id, stays ? null : move);
  return (
    <>
      <ViewBar zoom={zoom} setZoom={setZoom} byTouch={byTouch} setByTouch={setByTouch} />
      <SeasonPicture
        house={house}
        woven={woven}
        looks={looks}
        units={units}
        zoom={zoom}
        setZoom={setZoom}
        active={active}
        moving={moving}
        trial={trial}
        setMoving={setMoving}
        drop={({ brew, to }) =>
          decision.decide({ kind: 'pinned', brew, day: isoDay(to.day), tank: to.tank })
        }
        moveByTouch={byTouch}
      />
      {moving && move ? (
        <CarryingLine asked={{ ...move, trial, error }} plan={plan} stays={stays} by={moving.by} />
      ) : (
        <ReadingLine active={active} plan={plan} house={house} woven={woven} units={units} />
      )}
      <DecisionNotice decision={decision} />
    </>
  );
}
