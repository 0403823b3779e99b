import { coverCode } from '../words/vocabulary.ts';
import { VX, VY, VZ, WX, WY, WZ, X, Y, Z } from './bounce.ts';
import { BALL_RADIUS_M, GRAVITY_MPS2, ROLLING_SHARE } from './constants.ts';
import { meetOnGround } from './obstacles.ts';
import { passHole } from './passHole.ts';
import { boundary, ROLL_HOLED } from './rollEnd.ts';
import { copyGround, stopAtEdge } from './rollStep.ts';
import { recordPiece, recordRoll } from './rollRecord.ts';
import { STEP_S, shotMemory } from './shotMemory.ts';
import type { ShotWork } from './shotWork.ts';
import {
  STOP_DX,
  STOP_DY,
  STOP_PULL_X,
  STOP_PULL_Y,
  STOP_RESISTANCE,
  STOP_VX,
  STOP_VY,
  stopDisplacement,
} from './stopDisplacement.ts';

const { state: s, next: n, here, probe, at, times, stop } = shotMemory;

const SAND = coverCode('bunker');
/** Longest piece of a slide, and on the face of a bunker, which is little wider than the one. */
const SKID_PIECE_M = 0.3;
const SKID_PIECE_ON_FACE_M = 0.02;
/** Sand that falls less than this is floor, and goes on as floor where its fall is another by less than that. */
const FLOOR_FALL = 0.15;
const SAME_FALL = 0.03;
const MOST_PIECES = 1_000_000;

/**
 * From a ball on the ground with a velocity and a spin to one that rolls: sliding friction works on the slip until there
 * is none. On the level the speed left is (5 v + 2 r w) / 7 whatever the friction; the slope adds 5/7 of its pull.
 * A long slide goes in pieces, each over the ground it is on. Returns an outcome, or -1 to roll on.
 */
export function skid(w: ShotWork): number {
  // Speed of the skin at the contact on nearly level ground: v - r w x up.
  let slipX = (s[VX] as number) - BALL_RADIUS_M * (s[WY] as number); // arrays of fixed size, set once in shotMemory
  let slipY = (s[VY] as number) + BALL_RADIUS_M * (s[WX] as number);
  for (let piece = 0; piece < MOST_PIECES; piece += 1) {
    const code = here[3] as number;
    const over = boundary(code);
    if (over >= 0) return over;
    const slip = Math.sqrt(slipX * slipX + slipY * slipY);
    // Grass that stops a rolling ball harder than friction would stops a sliding one as hard.
    const grip = Math.max(
      (w.covers.friction[code] as number) * GRAVITY_MPS2,
      w.covers.rollingMps2[code] as number,
    );
    const left = (2 * slip) / (7 * grip);
    if (left < 1e-5) return -1;
    const vx = s[VX] as number;
    const vy = s[VY] as number;
    const speed = Math.sqrt(vx * vx + vy * vy);
    const longest =
      w.stepFactor * (code === SAND && !onFloor(w, speed) ? SKID_PIECE_ON_FACE_M : SKID_PIECE_M);
    // However slow it is, a steep face soon has it on its way.
    const fast = Math.max(speed, 0.3 * slip);
    const steep =
      2 *
      GRAVITY_MPS2 *
      Math.sqrt((here[1] as number) * (here[1] as number) + (here[2] as number) * (here[2] as number));
    const most = (2 * longest) / (fast + Math.sqrt(fast * fast + steep * longest));
    const last = left <= most;
    let time = last ? left : most;
    const slipX0 = slipX;
    const slipY0 = slipY;
    at[0] = (s[X] as number) + 0.5 * time * (vx - 0.5 * grip * time * (slipX / slip));
    at[1] = (s[Y] as number) + 0.5 * time * (vy - 0.5 * grip * time * (slipY / slip));
    w.ground.sample(at, probe);
    const pullX = GRAVITY_MPS2 * (probe[1] as number);
    const pullY = GRAVITY_MPS2 * (probe[2] as number);
    const pull = Math.sqrt(pullX * pullX + pullY * pullY);
    const fade = 3.5 * grip;
    if (last && pull < 0.9 * fade) {
      // On a plane the slip dies exactly as a rolling ball does, and the speed follows it: dv = 2/7 du - 5/7 pull dt.
      time = (fade * slip - (slipX * pullX + slipY * pullY)) / (fade * fade - pull * pull);
      stop[STOP_VX] = slipX;
      stop[STOP_VY] = slipY;
      stop[STOP_PULL_X] = pullX;
      stop[STOP_PULL_Y] = pullY;
      stop[STOP_RESISTANCE] = fade;
      stopDisplacement(stop);
      n[VX] = vx - (2 / 7) * slipX - ROLLING_SHARE * pullX * time;
      n[VY] = vy - (2 / 7) * slipY - ROLLING_SHARE * pullY * time;
      n[X] =
        (s[X] as number) +
        time * (vx - (2 / 7) * slipX - (ROLLING_SHARE / 2) * pullX * time) +
        (2 / 7) * (stop[STOP_DX] as number);
      n[Y] =
        (s[Y] as number) +
        time * (vy - (2 / 7) * slipY - (ROLLING_SHARE / 2) * pullY * time) +
        (2 / 7) * (stop[STOP_DY] as number);
      slipX = 0;
      slipY = 0;
    } else {
      // Friction along the slip half-way through the piece.
      const midX = slipX - 0.5 * time * (fade * (slipX / slip) + pullX);
      const midY = slipY - 0.5 * time * (fade * (slipY / slip) + pullY);
      const mid = Math.max(1e-9, Math.sqrt(midX * midX + midY * midY));
      const rubX = (grip * midX) / mid;
      const rubY = (grip * midY) / mid;
      n[VX] = vx - time * (rubX + pullX);
      n[VY] = vy - time * (rubY + pullY);
      n[X] = (s[X] as number) + 0.5 * (vx + n[VX]) * time;
      n[Y] = (s[Y] as number) + 0.5 * (vy + n[VY]) * time;
      slipX -= time * (3.5 * rubX + pullX);
      slipY -= time * (3.5 * rubY + pullY);
    }
    times[STEP_S] = time;
    w.ground.sample(n, probe);
    if (probe[3] !== code) {
      stopAtEdge(w, false);
      const share = times[STEP_S] / time;
      slipX = slipX0 + share * (slipX - slipX0);
      slipY = slipY0 + share * (slipY - slipY0);
      w.ground.sample(n, probe);
    }
    // What the piece climbs beyond what the slope half-way says comes off its speed too.
    const dx = n[X] - (s[X] as number);
    const dy = n[Y] - (s[Y] as number);
    const unseen = GRAVITY_MPS2 * ((probe[0] as number) - (here[0] as number)) - (pullX * dx + pullY * dy);
    const slower = (unseen * times[STEP_S]) / (dx * dx + dy * dy + 1e-12);
    const slides = slipX !== 0 || slipY !== 0;
    n[VX] -= (slides ? slower : ROLLING_SHARE * slower) * dx;
    n[VY] -= (slides ? slower : ROLLING_SHARE * slower) * dy;
    if (slides) {
      slipX -= slower * dx;
      slipY -= slower * dy;
    }
    if (w.obstacles.length > 0 && meetOnGround(w)) {
      // Off a wall the ball rolls: what spin it has left is not known.
      w.ground.sample(s, here);
      recordRoll(w);
      return -1;
    }
    const met = passHole(w);
    if (met === 1) return ROLL_HOLED;
    if (met === 0) {
      recordPiece(w);
      s[X] = n[X];
      s[Y] = n[Y];
      s[VX] = n[VX];
      s[VY] = n[VY];
      copyGround(probe, here);
    } else w.ground.sample(s, here);
    recordRoll(w);
    // A ball that has met the rim rolls on.
    if (met === 2) return boundary(here[3] as number);
  }
  return -1;
}

/** Whether sand is floor here and for a long piece of the way ahead. */
function onFloor(w: ShotWork, speed: number): boolean {
  const east = here[1] as number;
  const north = here[2] as number;
  if (speed < 1e-3 || east * east + north * north > FLOOR_FALL * FLOOR_FALL) return false;
  for (let part = 1; part <= 2; part += 1) {
    const ahead = ((part / 2) * SKID_PIECE_M) / speed;
    at[0] = (s[X] as number) + ahead * (s[VX] as number);
    at[1] = (s[Y] as number) + ahead * (s[VY] as number);
    w.ground.sample(at, probe);
    if (probe[3] !== SAND) return false;
    const changeEast = (probe[1] as number) - east;
    const changeNorth = (probe[2] as number) - north;
    if (changeEast * changeEast + changeNorth * changeNorth > SAME_FALL * SAME_FALL) return false;
  }
  return true;
}

/** Sets a ball down: keeps its speed across the ground, drops the rest. */
export function setDown(): void {
  s[Z] = here[0] as number;
  s[VZ] = 0;
  s[WZ] = 0;
}
