const words = {
  ball: {
    title: 'No ball yet',
    remedy: 'Pin a ball position beside this green, and the plan for it appears here.',
  },
  flag: { title: 'No flag yet', remedy: 'Stand a flag on this green, and the plan to it appears here.' },
} as const;

/** What a plan is still without, and where it comes from. */
export function NothingYet({ what }: { readonly what: keyof typeof words }): React.JSX.Element {
  const { title, remedy } = words[what];
  return (
    <div className="answer-empty">
      <h1 className="answer-name">{title}</h1>
      <p>{remedy}</p>
    </div>
  );
}
