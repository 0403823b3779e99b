/** The mark: a dip in the ground with the short strokes a draughtsman hangs below it. */
export function BrandMark(): React.JSX.Element {
  return (
    <svg width="34" height="24" viewBox="0 0 34 24" aria-hidden fill="none" stroke="currentColor">
      <path d="M2 5c6 0 8 9 15 9S26 5 32 5" strokeWidth="2.6" strokeLinecap="round" />
      <path
        d="M9.5 14.2l-1.6 3.6M14.3 17l-.7 4M19.7 17l.7 4M24.5 14.2l1.6 3.6"
        strokeWidth="1.8"
        strokeLinecap="round"
      />
    </svg>
  );
}
