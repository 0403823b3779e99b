import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { groupWords, thingsOf } from './group.ts';

interface DrawerButtonProps {
  readonly open: boolean;
  readonly document: AtlasDocument;
  readonly heldIds: readonly string[];
  /** How many things there are to look at. */
  readonly findings: number;
  readonly toggle: () => void;
}

/** Where the panel is a drawer: opens it, and says what is in it. "Details of the bunker, 2 to look at". */
export function DrawerButton(props: DrawerButtonProps): React.JSX.Element {
  const things = thingsOf(props.document, props.heldIds);
  const held = things.length === 0 ? '' : ` of ${groupWords(things)}`;
  const found = props.findings === 0 ? '' : `, ${String(props.findings)} to look at`;
  return (
    <button type="button" className="drawer-button" aria-expanded={props.open} onClick={props.toggle}>
      {props.open ? 'Close' : `Details${held}${found}`}
    </button>
  );
}
