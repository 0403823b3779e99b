import { removeRecords } from '../../shared/atlas/edits.ts';
import { turnRecords } from '../../shared/atlas/shaping.ts';
import type { AreaKind } from '../../shared/words/vocabulary.ts';
import { changeKind, groupCentre, groupWords, idsLike, idsWithin, joinHeld, thingsOf } from './group.ts';
import type { Drag, HandContext } from './handState.ts';
import { HandWork } from './handWork.ts';
import { copyThings } from './making.ts';
import type { Thing } from './planeShapes.ts';

/** What the hand does with several things at once: each is one step of the document. */
export class HandGroup extends HandWork {
  /** All that is held: the thing itself and those taken with it. */
  protected allHeld(context: HandContext | undefined): readonly Thing[] {
    const { heldId, others } = this.state;
    return context === undefined || heldId === null ? [] : thingsOf(context.document, [heldId, ...others]);
  }

  protected get holdsSeveral(): boolean {
    return this.state.others.length > 0;
  }

  /** Takes hold of things, the first of them the one that stands for all. */
  holdAll(ids: readonly string[]): void {
    const [heldId = null, ...others] = ids;
    this.set({ heldId, others, corner: null, trouble: null });
  }

  /** Takes one more thing, or lets go of it where it is held. */
  alsoHold(id: string): void {
    const { heldId, others } = this.state;
    const all = heldId === null ? [] : [heldId, ...others];
    this.holdAll(all.includes(id) ? all.filter((one) => one !== id) : [...all, id]);
  }

  /** Takes everything of the kind of the thing held. */
  holdAllLike(): void {
    const context = this.context?.();
    const held = this.held(context);
    if (context === undefined || held === null) return;
    this.holdAll([held.id, ...idsLike(context.document, held).filter((id) => id !== held.id)]);
  }

  protected holdFramed(context: HandContext, { from, to }: Extract<Drag, { kind: 'frame' }>): void {
    const { heldId, others } = this.state;
    const before = heldId === null ? [] : [heldId, ...others];
    const framed = idsWithin(context.document, from, to).filter((id) => !before.includes(id));
    this.holdAll([...before, ...framed]);
    // What has been framed is moved next, more often than added to.
    if (before.length + framed.length > 0) this.set({ tool: 'select' });
  }

  takeOut(): void {
    const context = this.context?.();
    const held = this.allHeld(context);
    if (context === undefined || held.length === 0) return;
    context.edit(
      removeRecords(
        `took out ${groupWords(held)}`,
        held.map(({ id }) => id),
      ),
    );
    this.set({ heldId: null, corner: null });
  }

  copy(): void {
    const context = this.context?.();
    const held = this.allHeld(context);
    if (context === undefined || held.length === 0) return;
    this.tryOn('', () => {
      const { edit, ids } = copyThings(context, held);
      context.edit(edit);
      this.holdAll(ids);
    });
  }

  turnBy(turnDeg: number): void {
    const context = this.context?.();
    const held = this.allHeld(context);
    if (context === undefined || held.length === 0) return;
    const ids = held.map(({ id }) => id);
    const centre = groupCentre(context.document, held);
    context.edit(turnRecords(`turned ${groupWords(held)}`, ids, centre, turnDeg));
  }

  changeKinds(kind: AreaKind): void {
    const context = this.context?.();
    context?.edit(changeKind(this.allHeld(context), kind));
  }

  join(): void {
    const context = this.context?.();
    const held = this.allHeld(context);
    if (context === undefined) return;
    this.tryOn('', () => {
      context.edit(joinHeld(context.document, held));
      this.holdAll(held.slice(0, 1).map(({ id }) => id));
    });
  }
}
