import { describe, expect, it } from 'vitest';
import type { SectionContent } from '../../../shared/plate/section.ts';
import { drawSection } from '../../../shared/plate/section.ts';
import { markup } from '../../../shared/plate/markup.ts';
import { paperStyle, screenStyle } from '../../../shared/plate/style.ts';
import { coverCode } from '../../../shared/words/vocabulary.ts';
import { chipBall, chipFlag, chipOption } from './chip.ts';
import { heightAt } from './complex.ts';

const content: SectionContent = {
  ground: {
    sample: ([east = NaN, north = NaN], out) => {
      out[0] = heightAt(east, north);
      out[3] = coverCode(east < 12.6 ? 'green' : east < 13.8 ? 'fringe' : 'approach');
    },
  },
  option: chipOption(),
  ball: chipBall,
  ballLabel: '3',
  flag: chipFlag,
  flagLabel: 'B',
  units: { system: 'yards', paceM: 0.9 },
  landText: 'land 2 paces on',
  coarse: false,
  others: [],
};
const layout = { width: 774, height: 180 };

describe('section along a shot', () => {
  it('has one scale for heights and distances, and says so', () => {
    const { node, exaggeration, scaleText } = drawSection(layout, screenStyle('s'), content);
    expect(exaggeration).toBe(1);
    expect(scaleText).toBe('heights and distances to one scale');
    const written = markup(node);
    // Axis: 5 yd apart; apex 1.05 m above the ball. Both at one scale, so their drawn sizes stand in that ratio.
    const zero = Number(/<text x="([\d.]+)"[^>]*>0 yd</.exec(written)?.[1]);
    const five = Number(/<text x="([\d.]+)"[^>]*>5</.exec(written)?.[1]);
    const perM = (five - zero) / (5 * 0.9144);
    const flight =
      /<path d="(M[^"]+)" fill="none" stroke="var\(--propose\)"[^>]*stroke-dasharray="13 6"/.exec(
        written,
      )?.[1];
    const heights = [...(flight ?? '').matchAll(/[ML][\d.-]+ ([\d.-]+)/g)].map((m) => Number(m[1]));
    const rise = ((heights[0] ?? 0) - Math.min(...heights)) / perM;
    expect(rise).toBeGreaterThan(0.9);
    expect(rise).toBeLessThan(1.2);
  });

  it('names the covers it crosses, the landing, the run and where the balls stop', () => {
    const written = markup(drawSection(layout, screenStyle('s'), content).node);
    for (const cover of ['approach', 'fringe', 'green']) expect(written).toContain(`data-cover="${cover}"`);
    expect(written).toContain('land 2 paces on');
    expect(written).toContain('top of flight 3½\u00a0ft');
    expect(written).toContain('each tick: where one of 160 balls stops');
    expect(written).toContain('data-part="flight-band"');
  });

  it('draws a putt as a roll from the ball, without flight or landing', () => {
    const putt = {
      ...chipOption(),
      landing: null,
      landingOnM: null,
      apexM: 0,
      landingsM: new Float64Array(0),
    };
    const written = markup(
      drawSection(layout, screenStyle('s'), { ...content, option: putt, landText: '' }).node,
    );
    expect(written).not.toContain('data-part="landing"');
    expect(written).not.toContain('data-part="flight-band"');
    expect(written).toContain('rolls');
  });

  it('prints in black only, the same every time', () => {
    const draw = (): string => markup(drawSection(layout, paperStyle('s'), content).node);
    expect(draw()).toBe(draw());
    const colours = [...draw().matchAll(/(?:fill|stroke)="([^"]*)"/g)].map((m) => m[1]);
    expect(new Set(colours)).toEqual(new Set(['#000', '#fff', 'none']));
  });
});
