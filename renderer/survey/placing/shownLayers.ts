import type { BaseLayerSetting } from '../../store/baseLayerSettings.ts';
import type { PlacingState } from './placingState.ts';

/** The layers that are on, and the one whose shift is in hand, as it lies now. */
export function shownLayers(
  layers: readonly BaseLayerSetting[],
  shifting: Pick<PlacingState, 'subject' | 'affine'> | null,
): readonly BaseLayerSetting[] {
  return layers
    .filter(({ on }) => on)
    .map((layer) =>
      shifting?.subject?.kind === 'source' && shifting.subject.id === layer.id
        ? { ...layer, eastM: shifting.affine.c, northM: shifting.affine.f }
        : layer,
    );
}
