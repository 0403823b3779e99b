import type { PlanePoint } from '../../shared/geometry/points.ts';
import { followed, isNear, REACH_PX, snappedPlace } from './grips.ts';
import { HandGroup } from './handGroup.ts';
import type { HandContext, Spot } from './handState.ts';
import type { Sketch } from './sketch.ts';

/** How an outline goes on from its last corner: snapped to what is there, closed on its first, along an outline both lie on. */
export class HandTrace extends HandGroup {
  /** Along the outline the other way round, then straight, then as at first. */
  otherWay(): void {
    const { way, sketch } = this.state;
    this.set({ way: way === 'shorter' ? 'longer' : way === 'longer' ? 'straight' : 'shorter' });
    if (sketch !== null && sketch.next !== null) this.set({ sketch: this.towards(sketch, sketch.next) });
  }

  /** The sketch with its next corner under the pointer. */
  protected pointedAt(sketch: Sketch, spot: Spot, snapped: PlanePoint): Sketch {
    const [first] = sketch.corners;
    const closes = this.closed() && sketch.corners.length >= 2 && isNear(first, spot, REACH_PX.close);
    return this.towards(sketch, closes && first !== undefined ? first : snapped);
  }

  /** The sketch going on to a place, along the outline that both lie on if there is one. */
  protected towards(sketch: Sketch, next: PlanePoint): Sketch {
    const context = this.context?.();
    const last = sketch.corners.at(-1);
    const follows = context !== undefined && last !== undefined && this.closed();
    return {
      ...sketch,
      next,
      along: follows ? followed(context.document, last, next, this.state.way) : [],
    };
  }

  /** A click of a tool that draws: another corner, or the end on the first or on the last one. */
  protected putOrFinish(context: HandContext, spot: Spot): void {
    const { sketch, way } = this.state;
    const corners = sketch?.corners ?? [];
    const [first] = corners;
    const last = corners.at(-1);
    if (sketch !== null && first !== undefined && last !== undefined) {
      const toFirst = this.closed() && isNear(first, spot, REACH_PX.close);
      // Closed along an outline, the corners on the way there are the last ones.
      const along = toFirst ? followed(context.document, last, first, way) : [];
      if (toFirst && corners.length + along.length >= 3) {
        this.set({ sketch: { ...sketch, corners: [...corners, ...along] } });
        this.finish();
        return;
      }
      if (corners.length >= 2 && isNear(last, spot, 3)) {
        this.finish();
        return;
      }
    }
    const at = snappedPlace(context.document, spot, null);
    this.put(at, sketch === null ? [] : this.towards(sketch, at).along);
  }
}
