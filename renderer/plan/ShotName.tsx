import { Fragment } from 'react';

/** Breaks between shot and club, not at the hyphens inside them. */
export const ShotName = ({ name }: { readonly name: string }): React.JSX.Element => (
  <span className="shot-name">
    {name.split(' ').map((word, i) => (
      <Fragment key={i}>
        {i > 0 && ' '}
        <span className="whole">{word}</span>
      </Fragment>
    ))}
  </span>
);
