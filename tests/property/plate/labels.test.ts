import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LabelRequest } from '../../../shared/plate/labels.ts';
import { placeLabels } from '../../../shared/plate/labels.ts';
import { escapeMarkup } from '../../../shared/plate/markup.ts';
import type { Box } from '../../../shared/plate/view.ts';
import { overlaps } from '../../../shared/plate/view.ts';

const within: Box = { x: 0, y: 0, width: 600, height: 400 };
const coordinate = (most: number) => fc.double({ min: -50, max: most + 50, noNaN: true });

const request: fc.Arbitrary<LabelRequest> = fc.record({
  text: fc.string({ minLength: 1, maxLength: 24 }),
  at: fc.tuple(coordinate(600), coordinate(400)),
  size: fc.double({ min: 8, max: 24, noNaN: true }),
  face: fc.constantFrom('sans' as const, 'serifItalic' as const),
  weight: fc.constantFrom(400 as const, 600 as const, 700 as const),
  ink: fc.constant('#000'),
  away: fc.double({ min: 0, max: 20, noNaN: true }),
  leader: fc.boolean(),
  priority: fc.integer({ min: 0, max: 100 }),
});

const box: fc.Arbitrary<Box> = fc.record({
  x: coordinate(600),
  y: coordinate(400),
  width: fc.double({ min: 1, max: 120, noNaN: true }),
  height: fc.double({ min: 1, max: 120, noNaN: true }),
});

describe('placing texts', () => {
  it('never lays one over another, over a taken box or beyond the map', () => {
    fc.assert(
      fc.property(
        fc.array(request, { maxLength: 30 }),
        fc.array(box, { maxLength: 20 }),
        (requests, taken) => {
          const placed = placeLabels(requests, taken, within);
          placed.forEach((label, i) => {
            for (const other of placed.slice(i + 1)) expect(overlaps(label.box, other.box)).toBe(false);
            for (const other of taken) expect(overlaps(label.box, other)).toBe(false);
            expect(label.box.x).toBeGreaterThanOrEqual(0);
            expect(label.box.y).toBeGreaterThanOrEqual(0);
            expect(label.box.x + label.box.width).toBeLessThanOrEqual(600);
            expect(label.box.y + label.box.height).toBeLessThanOrEqual(400);
          });
        },
      ),
      { numRuns: 150 },
    );
  });

  it('finds a place for a text that stands alone on an open map', () => {
    fc.assert(
      fc.property(
        fc.record({ x: fc.integer({ min: 200, max: 400 }), y: fc.integer({ min: 100, max: 300 }) }),
        ({ x, y }) => {
          const alone: LabelRequest = {
            text: 'land 2 paces on',
            at: [x, y],
            size: 15,
            face: 'sans',
            weight: 700,
            ink: '#000',
            away: 10,
            leader: true,
            priority: 1,
          };
          expect(placeLabels([alone], [], within)).toHaveLength(1);
        },
      ),
    );
  });
});

describe('escaping', () => {
  it('leaves no character that could open a tag, close a quote or start an entity of its own', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
        const safe = escapeMarkup(text);
        expect(safe).not.toMatch(/[<>"']/);
        expect(safe.replace(/&(amp|lt|gt|quot|#39);/g, '')).not.toContain('&');
      }),
    );
  });
});
