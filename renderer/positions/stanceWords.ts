import type { Scene } from '../../shared/planner/scene.ts';
import { slopeAt } from '../../shared/terrain/slope.ts';

/** "Stance 4 % up, 2 % across": the slope along the line to the flag and across it. */
export function stanceWords(scene: Scene, ballId: string, flagId: string | null): string {
  const ball = scene.balls.find(({ record }) => record.id === ballId);
  const flag = scene.flags.find(({ record }) => record.id === flagId);
  if (ball === undefined || flag === undefined) return '';
  const { slopePct, downhillBearingDeg } = slopeAt(scene.surface, ball.at);
  const line = Math.atan2(flag.at.eastM - ball.at.eastM, flag.at.northM - ball.at.northM);
  const turned = (downhillBearingDeg * Math.PI) / 180 - line;
  const up = -slopePct * Math.cos(turned);
  const across = slopePct * Math.sin(turned);
  const part = (value: number, words: string): string[] =>
    Math.abs(value) < 0.5 ? [] : [`${Math.round(Math.abs(value))} % ${words}`];
  // Falling to the right puts the ball below a right-hander's feet, and above a left-hander's.
  const below = across > 0 === (scene.player.handed === 'right');
  const parts = [
    ...part(up, up > 0 ? 'uphill' : 'downhill'),
    ...part(across, below ? 'with the ball below the feet' : 'with the ball above the feet'),
  ];
  return `Stance to flag ${flag.record.label}: ${parts.length === 0 ? 'level' : parts.join(', ')}`;
}
