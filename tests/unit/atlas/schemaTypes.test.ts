import { describe, expectTypeOf, it } from 'vitest';
import type * as z from 'zod';
import type { AtlasRecord } from '../../../shared/atlas/records.ts';
import type { recordSchemas } from '../../../shared/atlas/schema.ts';

/** Lets mutable arrays of the parser stand beside the readonly ones of the records; pairs are positions. */
type ReadonlyDeep<T> = T extends readonly [unknown, unknown]
  ? T
  : T extends readonly (infer U)[]
    ? readonly ReadonlyDeep<U>[]
    : T extends object
      ? { readonly [K in keyof T]: ReadonlyDeep<T[K]> }
      : T;

type Parsed<T extends AtlasRecord['type']> = ReadonlyDeep<z.output<(typeof recordSchemas)[T]>>;
type Promised<T extends AtlasRecord['type']> = ReadonlyDeep<Extract<AtlasRecord, { readonly type: T }>>;

describe('the schema and the record interfaces', () => {
  it('promise the same, checked by the compiler', () => {
    expectTypeOf<Parsed<'atlas'>>().toEqualTypeOf<Promised<'atlas'>>();
    expectTypeOf<Parsed<'hole'>>().toEqualTypeOf<Promised<'hole'>>();
    expectTypeOf<Parsed<'area'>>().toEqualTypeOf<Promised<'area'>>();
    expectTypeOf<Parsed<'line'>>().toEqualTypeOf<Promised<'line'>>();
    expectTypeOf<Parsed<'spotHeight'>>().toEqualTypeOf<Promised<'spotHeight'>>();
    expectTypeOf<Parsed<'slopeReading'>>().toEqualTypeOf<Promised<'slopeReading'>>();
    expectTypeOf<Parsed<'holeLocation'>>().toEqualTypeOf<Promised<'holeLocation'>>();
    expectTypeOf<Parsed<'ballPosition'>>().toEqualTypeOf<Promised<'ballPosition'>>();
    expectTypeOf<Parsed<'conditions'>>().toEqualTypeOf<Promised<'conditions'>>();
    expectTypeOf<Parsed<'player'>>().toEqualTypeOf<Promised<'player'>>();
    expectTypeOf<Parsed<'planeByEye'>>().toEqualTypeOf<Promised<'planeByEye'>>();
    expectTypeOf<Parsed<'elevationGrid'>>().toEqualTypeOf<Promised<'elevationGrid'>>();
    expectTypeOf<Parsed<'source'>>().toEqualTypeOf<Promised<'source'>>();
    expectTypeOf<Parsed<'picture'>>().toEqualTypeOf<Promised<'picture'>>();
    expectTypeOf<Parsed<'choice'>>().toEqualTypeOf<Promised<'choice'>>();
  });
});
