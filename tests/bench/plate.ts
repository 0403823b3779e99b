import { planePoint } from '../../shared/geometry/points.ts';
import { drawMapLayers } from '../../shared/plate/plate.ts';
import { markup } from '../../shared/plate/markup.ts';
import { screenStyle } from '../../shared/plate/style.ts';
import { everyKind } from '../unit/plate/complex.ts';
import { analyticRelief } from '../unit/plate/relief.ts';

/**
 * One redraw of a green complex as after each zoom, against writing the same drawing out as markup, which any drawing
 * has to pay once: node by node, no geometry. The ratio does not depend on the machine.
 */
const style = screenStyle('bench');
const view = {
  centre: planePoint(0, 0),
  unitsPerM: 14,
  upBearingDeg: 0,
  box: { x: 0, y: 0, width: 1000, height: 700 },
};
const content = {
  areas: everyKind,
  base: 'lightRough',
  relief: analyticRelief(),
  marks: { balls: [], flags: [] },
  measurements: null,
  shots: [],
} as const;

const median = (run: () => void): number => {
  const times = Array.from({ length: 21 }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return times[10] ?? NaN;
};

const draw = (): ReturnType<typeof drawMapLayers> => drawMapLayers(view, style, content);
const drawn = draw();
const drawMs = median(draw);
const writeMs = median(() => {
  for (let i = 0; i < 20; i += 1) for (const layer of [drawn.ground, drawn.relief]) markup(layer);
});
process.stdout.write(
  `redraw of a green complex: ${drawMs.toFixed(1)} ms, ${((20 * drawMs) / writeMs).toFixed(1)} times writing it out as markup\n`,
);
