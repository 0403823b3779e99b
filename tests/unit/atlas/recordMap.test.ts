import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { type RecordChange, RecordMap } from '../../../shared/atlas/recordMap.ts';
import type { AtlasRecord } from '../../../shared/atlas/records.ts';
import { lonLat } from '../../../shared/geometry/points.ts';

const spot = (id: string, heightM: number): AtlasRecord => ({
  ...{ type: 'spotHeight', id, at: lonLat(0, 50), heightM, accuracyM: 0.01 },
});
const many = Array.from({ length: 300 }, (_, i) => spot(`many-${String(i)}`, i));
const id = fc.oneof(
  fc.constantFrom('a', 'b', 'c', 'd'),
  fc.integer({ min: 0, max: 299 }).map((i) => `many-${String(i)}`),
);
const change = fc.tuple(id, fc.option(fc.integer())).map(([one, height]): RecordChange => ({
  id: one,
  record: height === null ? null : spot(one, height),
}));

it('holds what a plain map would, whatever is changed, and leaves earlier ones as they were', () => {
  fc.assert(
    fc.property(fc.array(fc.array(change, { maxLength: 6 }), { maxLength: 8 }), fc.nat(7), (steps, from) => {
      let made = RecordMap.of(many);
      const plain = new Map(many.map((record) => [record.id, record]));
      const states = [{ made, plain: new Map(plain) }];
      for (const step of steps) {
        made = made.with(step);
        for (const { id: one, record } of step) {
          if (record === null) plain.delete(one);
          else plain.set(one, record);
        }
        states.push({ made, plain: new Map(plain) });
      }
      for (const state of states) {
        expect(state.made.size).toBe(state.plain.size);
        expect(new Map(state.made)).toEqual(state.plain);
        for (const one of ['a', 'd', 'many-0', 'many-299', 'nobody'])
          expect(state.made.get(one)).toBe(state.plain.get(one));
      }
      // From any state to the last, by what is told to be different, and so from a branch of its own.
      const branch = (states[from % states.length]?.made ?? made).with([{ id: 'e', record: spot('e', 1) }]);
      for (const start of [states[from % states.length]?.made ?? made, branch]) {
        const told = start.changesTo(made);
        expect(new Map(start.with(told?.changes ?? []))).toEqual(plain);
        if (told?.ordered !== true) continue;
        const stays = [...start.keys()].filter((one) => plain.has(one));
        expect([...made.keys()].slice(0, stays.length)).toEqual(stays);
      }
    }),
    { numRuns: 100 },
  );
  expect(RecordMap.of(many).changesTo(RecordMap.of(many))).toBeNull();
});
