// How much of the season is seen, and where: for those who neither pinch nor swipe.
import { memo } from 'react';
import { Button, ToggleButton } from 'react-aria-components';
import { Choices } from '../../parts/units-choice.tsx';
import { pan } from './picture.tsx';
import type { View, Zoom } from './zoom.ts';

const VIEWS: readonly { value: View; says: string }[] = [
  { value: 'season', says: 'Season' },
  { value: 'month', says: 'Month' },
  { value: 'week', says: 'Week' },
];

export const ViewBar = memo(function ViewBar(props: {
  zoom: Zoom;
  setZoom: (zoom: Zoom) => void;
  byTouch: boolean;
  setByTouch: (byTouch: boolean) => void;
}) {
  const { zoom } = props;
  const scroller = () => document.querySelector('.scroller');
  return (
    <div className="season-bar no-print">
      <Choices<View>
        label="How much of the season is seen"
        value={typeof zoom === 'string' ? zoom : null}
        options={VIEWS}
        choose={props.setZoom}
      />
      <span>
        <Button className="button plain small" onPress={() => pan(scroller(), -1)}>
          ← earlier
        </Button>
        <Button className="button plain small" onPress={() => pan(scroller(), 1)}>
          later →
        </Button>
      </span>
      <ToggleButton
        className="button small touch-only"
        isSelected={props.byTouch}
        onChange={props.setByTouch}
      >
        Move beers
      </ToggleButton>
    </div>
  );
});
