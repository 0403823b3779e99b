interface GroupSelectProps {
  readonly names: readonly string[];
  readonly chosen: string | null;
  readonly choose: (name: string | null) => void;
}

const EVERY = '';

/** Which balls are shown, planned and printed: one group or all of them. Nothing where there is no group. */
export function GroupSelect({ names, chosen, choose }: GroupSelectProps): React.JSX.Element | null {
  if (names.length === 0) return null;
  return (
    <label className="group-select">
      <span>Group</span>
      <select
        value={chosen !== null && names.includes(chosen) ? chosen : EVERY}
        onChange={({ target }) => choose(target.value === EVERY ? null : target.value)}
      >
        <option value={EVERY}>every ball</option>
        {names.map((name) => (
          <option key={name} value={name}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
