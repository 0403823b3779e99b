import type { UnitsPreference } from '../../shared/units/preference.ts';
import { drawsOutline, type HandState, runsAlong } from './handState.ts';
import { toolOf } from './tools.ts';

interface HandHintsProps {
  readonly state: HandState;
  readonly units: UnitsPreference;
  /** Only how to begin, for where there is room for a line. */
  readonly short?: boolean;
}

/** The keys that matter just now. */
export function HandHints({ state, units, short = false }: HandHintsProps): React.JSX.Element {
  const { tool, sketch, waiting, way } = state;
  const [step, farStep] =
    units.system === 'yards' ? ['a foot', 'a yard'] : ['a quarter of a metre', 'a metre'];
  const key = (name: string): React.JSX.Element => <kbd>{name}</kbd>;
  if (waiting !== null)
    return (
      <p className="hint">
        {key('Enter')} keeps it, a click keeps it and begins the next, {key('Esc')} lets go.
      </p>
    );
  if (sketch !== null && sketch.corners.length > 0)
    return (
      <p className="hint">
        {key('Enter')} {drawsOutline(state) ? 'or a click on the first corner closes it' : 'ends it'},{' '}
        {key('Backspace')} takes back a corner, {key('Esc')} lets go.
        {!short && ' Type a number for an exact side.'}
        {sketch.along.length > 0 || way !== 'shorter' ? (
          <> {key('X')} goes the other way round, then straight.</>
        ) : null}
      </p>
    );
  if (tool === 'several')
    return (
      <p className="hint">
        Pull a frame round what you want, or click one thing after another. With keys: {key(',')} {key('.')}{' '}
        walk the things{!short && <>, with {key('Shift')} they take the next along</>}.
      </p>
    );
  if (toolOf(tool).group === 'point')
    return (
      <p className="hint">
        Click where it is, or walk there with the arrow keys and press {key('Enter')}.
        {tool === 'slopeReading' && !short && ' Pull from there the way it falls to set the bearing as well.'}
      </p>
    );
  if (runsAlong(tool))
    return (
      <p className="hint">
        Click round it, or give its width and click along its middle: a path, a ditch or a burn.{' '}
        {key('Enter')} ends it.
      </p>
    );
  if (tool === 'tree')
    return <p className="hint">Drag from the trunk to the edge of the crown, or click for a usual one.</p>;
  const outline = drawsOutline(state);
  return (
    <p className="hint">
      {outline ? 'Click round it' : 'Click along it'}, or draw it in one stroke with the button or pen down.{' '}
      {!outline && <>{key('Enter')} ends it. </>}
      {tool === 'tierEdge' &&
        !short &&
        'The top of a bank is one, and so is its foot: heights on both sides tell how far it falls. '}
      With keys:{' '}
      {short ? (
        <>arrows walk, {key('Enter')} puts a corner.</>
      ) : (
        <>
          arrows walk {step}, with {key('Shift')} {farStep}, {key('Enter')} puts a corner, and{' '}
          {outline ? 'closes' : 'ends'} it where you stand on one. {key('Alt')} held, nothing snaps.
        </>
      )}
    </p>
  );
}
