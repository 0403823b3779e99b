import type { Scene } from '../../shared/planner/scene.ts';
import { percent } from '../../shared/units/format.ts';
import { slopeAt } from '../../shared/terrain/slope.ts';

/** "Stance to flag B: 4 % uphill, ball below the feet, 2 %": the slope along the line to the flag and across it. */
export function stanceWords(scene: Scene, ballId: string, flagId: string | null): string {
  const ball = scene.balls.find(({ record }) => record.id === ballId);
  const flag = scene.flags.find(({ record }) => record.id === flagId);
  if (ball === undefined || flag === undefined) return '';
  const { slopePct, downhillBearingDeg } = slopeAt(scene.surface, ball.at);
  const line = Math.atan2(flag.at.eastM - ball.at.eastM, flag.at.northM - ball.at.northM);
  const turned = (downhillBearingDeg * Math.PI) / 180 - line;
  const up = -slopePct * Math.cos(turned);
  const across = slopePct * Math.sin(turned);
  const told = (value: number): string => percent(Math.abs(value));
  // Falling to the right puts the ball below a right-hander's feet, and above a left-hander's.
  const below = across > 0 === (scene.player.handed === 'right');
  const parts = [
    ...(Math.abs(up) < 0.5 ? [] : [`${told(up)} ${up > 0 ? 'uphill' : 'downhill'}`]),
    ...(Math.abs(across) < 0.5 ? [] : [`ball ${below ? 'below' : 'above'} the feet, ${told(across)}`]),
  ];
  return `Stance to flag ${flag.record.label}: ${parts.length === 0 ? 'level' : parts.join(', ')}`;
}
