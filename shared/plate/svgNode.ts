/**
 * A drawing as data: made by pure code, turned into markup for paper or into elements for the window. Text and
 * attribute values are escaped by whoever serialises them, so a name can hold anything.
 */
export interface SvgNode {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly (SvgNode | string)[];
}
