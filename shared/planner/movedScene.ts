import type { LonLat } from '../geometry/points.ts';
import type { Scene } from './scene.ts';

/** A ball or flag on its way: where the hand has it now, not yet a step of the document. */
export interface HeldPlace {
  readonly id: string;
  readonly at: LonLat;
}

/** The scene with one of its balls or flags somewhere else, on the ground as it is; its key says where. */
export function movedScene(scene: Scene, { id, at }: HeldPlace): Scene {
  const there = scene.frame.toPlane(at);
  return {
    ...scene,
    key: `${scene.key} ${id} ${String(there.eastM)} ${String(there.northM)}`,
    balls: scene.balls.map((ball) =>
      ball.record.id === id ? { record: { ...ball.record, at }, at: there } : ball,
    ),
    flags: scene.flags.map((flag) =>
      flag.record.id === id ? { record: { ...flag.record, at }, at: there } : flag,
    ),
  };
}
