/**
 * Branded numbers: a bare number cannot pass where one of these is asked for, while each still computes as a
 * plain number. The constructors below are the only casts. Hot loops use plain numbers whose names carry the unit.
 */
declare const unit: unique symbol;

/** A length in metres. */
export type Metres = number & { readonly [unit]: 'metres' };
/** An angle in radians. */
export type Radians = number & { readonly [unit]: 'radians' };

export const metres = (value: number): Metres => value as Metres;
export const radians = (value: number): Radians => value as Radians;
export const radiansFromDegrees = (degrees: number): Radians => ((degrees * Math.PI) / 180) as Radians;
