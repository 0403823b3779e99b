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

  /** Where the keys have walked to: the place itself stays free, so that the next step goes on from it and not from an edge. */
  protected walked: Spot | null = null;

  /** The cursor goes to a place; what is drawn goes to the corner or edge it is nearest to, as under a pointer. */
  protected walkTo(context: HandContext, at: PlanePoint, stepM: number): void {
    const { sketch } = this.state;
    this.cursorMoved = true;
    if (!this.draws()) {
      this.set({ cursor: at, snap: null });
      return;
    }
    // Nearer than half a step: the places between edges are there for the keys as well.
    const reachM = Math.min(REACH_PX.snap * context.metresPerPx(), 0.5 * stepM);
    const spot: Spot = { at, metresPerPx: reachM / REACH_PX.snap, alt: false };
    const place = snappedPlace(context.document, spot, null);
    this.walked = spot;
    this.set({
      cursor: at,
      snap: place === at ? null : place,
      sketch: sketch === null ? null : this.pointedAt(sketch, spot, place),
    });
  }

  /** A corner where the keys have walked to, or else at a place. */
  protected putWalked(context: HandContext, at: PlanePoint): void {
    const { walked, cursorMoved } = this;
    if (walked !== null && cursorMoved && this.state.cursor === walked.at) this.putOrFinish(context, walked);
    else this.put(at);
    // The walk goes on from where it was, on an edge or off it.
    this.set({ cursor: this.state.cursor ?? at, snap: null });
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
