// What the plan is worth: money, work and lateness against two plain ways, what each strain gives, and how much it can bear.
import { useQuery } from '@tanstack/react-query';
import { ErrorNotice } from '../../parts/failed.tsx';
import { strainLooks } from '../../parts/strains.ts';
import { houseQuery } from '../../queries/house.ts';
import { planQuery } from '../../queries/plan.ts';
import '../../styles/worth.css';
import { AliveStrip } from './alive-strip.tsx';
import { HindsightSection } from './hindsight.tsx';
import { Limits } from './limits.tsx';
import { Steady } from './steady.tsx';
import { StrainLedger } from './strain-ledger.tsx';
import { ThreeWays } from './three-ways.tsx';

export default function WorthPage() {
  const plan = useQuery(planQuery);
  const house = useQuery(houseQuery).data?.house ?? null;
  if (plan.isError) return <ErrorNotice error={plan.error} />;
  const made = plan.data?.plan ?? null;
  if (plan.isPending || (made !== null && house === null)) {
    return <p className="quiet waiting">Reading the season …</p>;
  }
  return (
    <>
      <h1 className="season-title">What it saves</h1>
      {made === null || house === null ? (
        <p className="lead-text">No plan is in force yet, so there is nothing to weigh.</p>
      ) : (
        <div className="worth">
          <ThreeWays plan={made} house={house} />
          <StrainLedger plan={made} looks={strainLooks(made, house)} />
          <AliveStrip plan={made} looks={strainLooks(made, house)} />
          <HindsightSection looks={strainLooks(made, house)} />
          <Steady plan={made} />
          <Limits plan={made} />
        </div>
      )}
    </>
  );
}
