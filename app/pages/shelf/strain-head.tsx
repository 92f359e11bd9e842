// The name of a strain over what is of it, with the letter that tells it apart.
import type { StrainLook } from '../../parts/strains.ts';

export function StrainHead(props: { look: StrainLook }) {
  const { look } = props;
  return (
    <h3>
      <span className="strain-letter" aria-hidden="true">
        {look.letter}
      </span>{' '}
      {look.yeast}
    </h3>
  );
}
